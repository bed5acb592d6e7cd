/**
 * Which stock bends a bend of a runner can be cut from, and how much straight a piece of one can keep at either end. mm, degrees.
 */
import type { StockBend, Tube, Workshop } from '../../../../shared/design/types';
import { assumedBend } from '../../../../shared/stock/workshop';
import { alike, SAME_ANGLE, sameTube } from '../../nest/sameTube';

export type Supply = {
  /** What it can be cut from; never empty, so that pieces can be listed even where there is nothing. */
  readonly stock: readonly StockBend[];
  /** The workshop lists no bend of this tube. */
  readonly assumed: boolean;
  /** Where the workshop lists this tube, but not with this radius: the radii that it has, rising. */
  readonly otherRadii: readonly number[] | null;
};

export function supplyOf(
  workshop: Pick<Workshop, 'bends' | 'longestLeg'> | undefined,
  tube: Tube,
  radius: number,
): Supply {
  const ofTube = (workshop?.bends ?? []).filter((stock) => sameTube(stock, tube));
  const listed = ofTube.filter((stock) => alike(stock.radius, radius));
  if (listed.length > 0) return { stock: shortened(toBeHad(listed), workshop), assumed: false, otherRadii: null };
  const stock = shortened([assumedBend(tube, radius, 'assumed')], workshop);
  if (ofTube.length === 0) return { stock, assumed: true, otherRadii: null };
  const otherRadii = [...new Set(ofTube.map((bend) => bend.radius))].sort((a, b) => a - b);
  return { stock, assumed: false, otherRadii };
}

function shortened(
  stock: readonly StockBend[],
  { longestLeg = Number.POSITIVE_INFINITY }: Pick<Workshop, 'longestLeg'> = {},
): StockBend[] {
  return stock.map((bend) => ({
    ...bend,
    legs: [Math.min(bend.legs[0], longestLeg), Math.min(bend.legs[1], longestLeg)],
  }));
}

/** Those on sale, since there is always one more of them; where none is, those on the shelf; where none is there either, as listed. */
function toBeHad(listed: readonly StockBend[]): readonly StockBend[] {
  const onSale = listed.filter(({ buy = true }) => buy);
  if (onSale.length > 0) return onSale;
  const onShelf = listed.filter(({ count = 0 }) => count > 0);
  return onShelf.length > 0 ? onShelf : listed;
}

/** A rest at least this wide is a piece that can be held; narrower ones share evenly instead. degrees; common practice, no source */
const LEAST_REST = 30;

/**
 * A bend that turns more than any stock bend, in several: as many whole ones as go into it, which need no cut through their
 * arc, and the rest; or equal shares where that would be a sliver.
 */
export function arcsOf(angle: number, stock: readonly StockBend[]): number[] {
  const widest = Math.max(...stock.map((bend) => bend.angle));
  const count = Math.max(1, Math.ceil((angle - SAME_ANGLE) / widest));
  const rest = angle - (count - 1) * widest;
  if (count === 1 || rest >= Math.min(LEAST_REST, widest)) return [...Array<number>(count - 1).fill(widest), rest];
  return Array<number>(count).fill(angle / count);
}

/** The stock angle that a piece is the whole of, where it is. */
export const wholeOf = (angle: number, stock: readonly StockBend[]): number | undefined =>
  stock.find((bend) => Math.abs(bend.angle - angle) <= SAME_ANGLE)?.angle;

/** Most straight that a piece keeps ahead of its arc, and behind it. */
export type Legs = readonly [ahead: number, behind: number];

/**
 * The ways to cut an arc: one leg of a bend that turns more, either way round, or both of one that turns as much.
 * @param arcs as `arcsOf` has them: the first keeps the leg ahead, the last the one behind
 */
export function waysToCut(arcs: readonly number[], stock: readonly StockBend[]): Legs[] {
  const longest = (angle: number): number =>
    Math.max(0, ...stock.filter((bend) => bend.angle >= angle - SAME_ANGLE).flatMap(({ legs }) => legs));
  if (arcs.length > 1) return [[longest(arcs[0]!), longest(arcs.at(-1)!)]];
  const angle = arcs[0]!;
  const whole = stock.filter((bend) => Math.abs(bend.angle - angle) <= SAME_ANGLE);
  const ways: Legs[] = [
    [longest(angle), 0],
    [0, longest(angle)],
    ...whole.flatMap(({ legs: [a, b] }): Legs[] => [
      [a, b],
      [b, a],
    ]),
  ];
  return ways.filter((way, i) => !ways.some((other, j) => i !== j && isBetter(other, way, j < i)));
}

const isBetter = (a: Legs, b: Legs, first: boolean): boolean =>
  a[0] >= b[0] && a[1] >= b[1] && (first || a[0] > b[0] || a[1] > b[1]);
