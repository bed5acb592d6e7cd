/**
 * From nominal straights to sawn ones and back. A weld leaves its gap open and draws the two pieces together; what it draws in more
 * than it opens is sawn on beforehand, on straight tube, since arcs are cut at their angle. mm.
 */
import type { WorkshopDefaults } from '../../../../shared/stock/workshop';
import type { Piece } from '../report';

export type Straights = Pick<Piece, 'kind' | 'in' | 'out'>;
export type Welds = Pick<WorkshopDefaults, 'weldGap' | 'weldShrinkage'>;
/** What is sawn on at the tube's ends, to be trimmed off. */
export type Trims = { readonly start: number; readonly end: number };

/** What the two pieces at a joint are sawn longer by; negative: shorter. */
export const allowanceOf = ({ weldGap, weldShrinkage }: Welds): number => weldShrinkage - weldGap;

/** @returns the joints (by the piece before) where neither side has straight to take it, beside the sawn straights */
export function sawnOf(pieces: readonly Straights[], welds: Welds, trims: Trims) {
  const sawn = pieces.map((piece) => ({ in: piece.in, out: piece.out }));
  const allowance = allowanceOf(welds);
  const untaken: number[] = [];
  for (let k = 0; k + 1 < pieces.length && allowance !== 0; k++) {
    // The straight at the joint's side, wherever the piece keeps it; what is left once others took theirs.
    const sides = [
      { of: sawn[k]!, key: pieces[k]!.kind === 'straight' ? ('in' as const) : ('out' as const) },
      { of: sawn[k + 1]!, key: 'in' as const },
    ];
    const able = (share: number) => sides.filter(({ of, key }) => of[key] > 0 && of[key] + share > 0);
    const both = able(allowance / 2);
    const takers = both.length === 2 ? both : able(allowance).slice(0, 1);
    if (takers.length === 0) untaken.push(k);
    for (const { of, key } of takers) of[key] += allowance / takers.length;
  }
  if (sawn.length > 0) {
    sawn[0]!.in += trims.start;
    const last = pieces.at(-1)!;
    sawn.at(-1)![last.kind === 'straight' ? 'in' : 'out'] += trims.end;
  }
  return { sawn, untaken };
}

/** The straights once sawn pieces are welded and trimmed: each joint opens and draws in. Untaken allowances show. */
export function weldedStraights<T extends Straights>(sawn: readonly T[], welds: Welds, trims: Trims): T[] {
  return sawn.map((piece, k) => {
    const joint = k > 0 ? allowanceOf(welds) : 0;
    const isLast = k === sawn.length - 1;
    const start = k === 0 ? trims.start : 0;
    const end = isLast ? trims.end : 0;
    const inOnly = piece.kind === 'straight';
    return { ...piece, in: piece.in - joint - start - (inOnly ? end : 0), out: piece.out - (inOnly ? 0 : end) };
  });
}
