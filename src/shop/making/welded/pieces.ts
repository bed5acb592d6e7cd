/** From one cut a straight and the arcs of each bend to pieces in the order of the gas, and what is known at each of their joints. mm, degrees. */
import { type BendTable, LENGTH_TOLERANCE } from '../../../../geometry';
import { arcLength } from '../../arcs';
import type { StraightCut } from './straight';

export type Cut = {
  readonly kind: 'bend' | 'straight';
  readonly in: number;
  readonly angle: number;
  readonly radius: number;
  readonly out: number;
  /** Of an arc: which bend it is of, and whether it is its first. */
  readonly bend: number;
  readonly begins: boolean;
};

export function cutsOf(
  { rows }: BendTable,
  arcs: readonly (readonly number[])[],
  straights: readonly StraightCut[],
): Cut[] {
  const bar = (length: number): Cut[] =>
    some(length) > 0 ? [{ kind: 'straight', in: length, angle: 0, radius: 0, out: 0, bend: -1, begins: false }] : [];
  const bends = arcs.map((list, bend) =>
    list.map(
      (angle, k): Cut => ({
        kind: 'bend',
        in: k === 0 ? some(straights[bend]!.in) : 0,
        angle,
        radius: rows[bend]!.radius,
        out: k === list.length - 1 ? some(straights[bend + 1]!.out) : 0,
        bend,
        begins: k === 0,
      }),
    ),
  );
  return straights.flatMap((straight, i) => [...bar(straight.bar), ...(bends[i] ?? [])]);
}

/** What is left of a difference that should be none is none: a leg of that length could carry nothing. */
const some = (length: number): number => (Math.abs(length) < LENGTH_TOLERANCE ? 0 : length);

export const lengthOf = (cut: Pick<Cut, 'in' | 'out' | 'angle' | 'radius'>): number =>
  cut.in + arcLength(cut) + cut.out;

/** Straight from a joint back to a bend or the tube's start, and on to a bend or its end. */
export function straightsAbout(cuts: readonly Cut[], after: number): { before: number; behind: number } {
  let before = 0;
  for (let k = after; k >= 0; k--) {
    before += cuts[k]!.kind === 'bend' ? cuts[k]!.out : cuts[k]!.in;
    if (cuts[k]!.kind === 'bend') break;
  }
  let behind = 0;
  for (let k = after + 1; k < cuts.length; k++) {
    behind += cuts[k]!.in;
    if (cuts[k]!.kind === 'bend') break;
  }
  return { before, behind };
}
