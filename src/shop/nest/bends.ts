/**
 * Welded-up pieces out of stock bends. They lie one after the other along the arc, a kerf between two and one more where arc is
 * left. A piece that keeps a leg lies at an end whose leg is long enough, turned round where that helps; one that keeps both takes
 * the whole bend. A leg that nobody keeps is sawn off beyond the arc. Angles degrees, legs and radius mm.
 */
import { arcAngle } from '../arcs';
import type { PlacedStock, StockCut } from '../making/report';
import { type Cuts, cutAll, SECONDS } from './cutAll';
import type { Stock } from './fill';
import { gathered } from './gathered';
import { SAME_ANGLE } from './sameTube';
import type { Bin, Supply } from './share';

export type CutBend = {
  readonly id: string;
  readonly angle: number;
  /** Straight before and after the arc, along the gas. */
  readonly legs: readonly [before: number, after: number];
};
export type BendStock = {
  readonly id: string;
  readonly angle: number;
  readonly legs: readonly [number, number];
  readonly count: number;
  readonly buy: boolean;
  readonly price?: number;
};

export type BendProblem = {
  readonly pieces: readonly CutBend[];
  readonly stock: readonly BendStock[];
  /** All of this radius. */
  readonly radius: number;
  readonly kerf: number;
  readonly seconds?: number;
};

/** Straight shorter than this is none. */
export const NO_LEG = 0.01;
const ALIKE = 1e-6;

/** How a piece may lie: at which ends (0 anywhere, 1 the first, 2 the second, 3 either), or only as the whole of the bend. */
export function lies({ angle, legs }: CutBend, bend: BendStock): { mask: number } | 'whole' | null {
  const [before, after] = legs;
  const [first, second] = bend.legs;
  const fits = (leg: number, room: number) => leg <= room + ALIKE;
  const whole = Math.abs(angle - bend.angle) <= SAME_ANGLE;
  if (before > NO_LEG && after > NO_LEG) {
    const either = (fits(before, first) && fits(after, second)) || (fits(before, second) && fits(after, first));
    return whole && either ? 'whole' : null;
  }
  const leg = Math.max(before, after);
  const mask = leg <= NO_LEG ? 0 : (fits(leg, first) ? 1 : 0) + (fits(leg, second) ? 2 : 0);
  if (leg > NO_LEG && mask === 0) return null;
  if (angle <= bend.angle) return { mask };
  return whole ? 'whole' : null;
}

export async function cutBends({ pieces, stock, radius, kerf, seconds = SECONDS }: BendProblem): Promise<Cuts> {
  const lost = arcAngle(kerf, radius);
  const types = gathered(pieces, ({ angle, legs }) => [angle, ...legs].map((n) => Math.round(n / ALIKE)).join());
  const money = stock.every(({ buy, price }) => !buy || price !== undefined);
  const supplies = stock.map((bend): Supply => {
    const ways = types.map(([piece]) => lies(piece!, bend));
    const filling: Stock = {
      room: bend.angle + lost,
      takes: ways.map((way, t) => (way && way !== 'whole' ? types[t]![0]!.angle + lost : Number.POSITIVE_INFINITY)),
      ends: ways.map((way) => (way && way !== 'whole' ? way.mask : 0)),
      alone: ways.flatMap((way, t) => (way === 'whole' ? [t] : [])),
    };
    return { stock: filling, shelf: bend.count, buy: bend.buy, cost: money ? (bend.price ?? 0) : 1, size: bend.angle };
  });
  return cutAll(types, supplies, stock, seconds, {
    least: { shelf: 'degrees of bend taken from the shelf', bought: money ? 'money' : 'bends bought' },
    laid: (bin, number, some) => laid(bin, number, stock, lost, some),
  });
}

function laid(
  { supply, source }: Bin,
  number: number,
  stock: readonly BendStock[],
  lost: number,
  pieces: CutBend[],
): PlacedStock {
  const bend = stock[supply]!;
  pieces.sort((a, b) => b.angle - a.angle);
  const used = { stock: bend.id, kind: 'bend', number, source } as const;
  if (pieces.length === 1 && lies(pieces[0]!, bend) === 'whole')
    return { ...used, cuts: [wholeCut(pieces[0]!, bend)], left: 0 };
  const [first, second] = atEnds(pieces, bend);
  const others = pieces.filter((piece) => piece !== first && piece !== second);
  const taken = pieces.reduce((sum, { angle }) => sum + angle + lost, 0);
  const left = Math.max(0, bend.angle - taken);
  // What is left stays in one piece, where it can at an end, with the leg that is there.
  let at = second && !first ? Math.max(0, bend.angle - taken + lost) : 0;
  const cuts: StockCut[] = [];
  for (const piece of first ? [first, ...others] : others) {
    cuts.push(cutAt(piece, at, piece === first ? 0 : null));
    at += piece.angle + lost;
  }
  if (second) cuts.push(cutAt(second, bend.angle - second.angle, 1));
  return { ...used, cuts, left };
}

/** Who lies at the first end, and who at the second, of those that keep a leg. */
function atEnds(pieces: readonly CutBend[], bend: BendStock): readonly [CutBend | undefined, CutBend | undefined] {
  const maskOf = (piece: CutBend) => {
    const way = lies(piece, bend);
    return way && way !== 'whole' ? way.mask : 0;
  };
  const [one, other] = pieces.filter((piece) => maskOf(piece) > 0);
  if (!one) return [undefined, undefined];
  if (!other) return maskOf(one) & 1 ? [one, undefined] : [undefined, one];
  return maskOf(one) & 1 && maskOf(other) & 2 ? [one, other] : [other, one];
}

function cutAt({ id, angle, legs: [before, after] }: CutBend, from: number, end: 0 | 1 | null): StockCut {
  const cut = { piece: id, from, to: from + angle };
  if (end === null) return cut;
  const leg = Math.max(before, after);
  const reversed = end === 0 ? after > NO_LEG : before > NO_LEG;
  return { ...cut, legs: end === 0 ? [leg, 0] : [0, leg], ...(reversed ? { reversed } : {}) };
}

function wholeCut({ id, legs }: CutBend, bend: BendStock): StockCut {
  const [before, after] = legs.map((leg) => (leg > NO_LEG ? leg : 0)) as [number, number];
  const straight = before <= bend.legs[0] + ALIKE && after <= bend.legs[1] + ALIKE;
  const cut = { piece: id, from: 0, to: bend.angle };
  if (before === 0 && after === 0) return cut;
  return straight ? { ...cut, legs: [before, after] } : { ...cut, legs: [after, before], reversed: true };
}
