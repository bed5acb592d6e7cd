/**
 * Whether a tube can be bent in one go: every bend needs `clamp` of straight ahead of it, on the side already past the die, and
 * the last one `tail` behind it; trims count. A short straight between two bends is short from either end, so the tube must be
 * split there; what is short at an end is mended by more trim, or by a split anywhere, since a split end gets all it needs. mm
 */
import { STRAIGHT_TOLERANCE } from '../../../../geometry';
import type { MachineRow } from '../report';
import type { BenderSettings } from './bender';

export type Grips = {
  /** Ahead of the first bend, from either end, trims included. */
  readonly start: number;
  readonly end: number;
  /** Before the second bend, the third … */
  readonly between: readonly number[];
};

export type Clamping = {
  readonly fromStart: boolean;
  readonly fromEnd: boolean;
  /** Straights between bends that are too short, by the bend of this tube that follows, counted from 1. */
  readonly short: readonly number[];
  /** Bends of this tube before which splits would let all be clamped; empty where none are needed, or none help. */
  readonly offered: readonly number[];
};

export const gripsOf = (rows: readonly MachineRow[]): Grips => ({
  start: rows[0]!.grip,
  end: rows.at(-1)!.grip,
  between: rows.slice(1, -1).map(({ grip }) => grip),
});

export function clamping(
  fromStart: readonly MachineRow[],
  fromEnd: readonly MachineRow[],
  { clamp, tail }: Pick<BenderSettings, 'clamp' | 'tail'>,
): Clamping {
  const all = (rows: readonly MachineRow[]): boolean => rows.every(({ clamps }) => clamps);
  const { start, end, between } = gripsOf(fromStart);
  const short = between.flatMap((grip, i) => (isShort(grip, clamp) ? [i + 2] : []));
  const judged = { fromStart: all(fromStart), fromEnd: all(fromEnd), short };
  if (judged.fromStart || judged.fromEnd) return { ...judged, offered: [] };
  const least = Math.min(clamp, tail);
  const endsServe = !isShort(start, least) && !isShort(end, least);
  if (!endsServe || fromStart.length < 3) return { ...judged, offered: [] };
  const longest = between.indexOf(Math.max(...between)) + 2;
  return { ...judged, offered: short.length > 0 ? short : [longest] };
}

export const isShort = (straight: number, needed: number): boolean => straight < needed - STRAIGHT_TOLERANCE;
