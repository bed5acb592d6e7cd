/** One scale for every strip, so that lengths compare by eye; and the ruler's marks. mm on the strip, px on the screen. */
import type { Display } from '../../../shared/design/types';
import { MM_PER_INCH } from '../../../shared/units';
import type { EndGroup } from './ends';
import { roundUp } from './ends';

/** Height of a strip, px. Here and not with the strip, whose parts need it while they load. */
export const STRIP_HEIGHT = 24;

export type Scale = {
  readonly pxPerMm: number;
  /** mm that the width holds. */
  readonly span: number;
  readonly x: (mm: number) => number;
};

/** A little air past the longest end, so that a target line at the very end still reads as a line. */
const AIR = 1.015;

/** Lengths that follow a hand stir in digits that nobody sees: the scale of all strips must not stir with them, mm. */
const SPAN_STEP = 0.01;

/** mm that the rack must hold. */
export function spanOf(groups: readonly EndGroup[]): number {
  const reach = groups.flatMap((g) => [
    g.target ?? 0,
    ...g.strips.map((s) => Math.max(s.length ?? 0, ...s.pieces.map((p) => p.to))),
  ]);
  return Math.round((Math.max(1, ...reach) * AIR) / SPAN_STEP) * SPAN_STEP;
}

export function scaleTo(span: number, width: number): Scale {
  const pxPerMm = width / span;
  return { pxPerMm, span, x: (mm) => mm * pxPerMm };
}

export type Mark = { readonly mm: number; readonly label: string };

const LEAST_MARK_GAP = 56;

/** Round lengths in the display's unit, far enough apart to label. */
export function rulerMarks({ pxPerMm, span }: Scale, display: Display): Mark[] {
  const unit = display === 'in' ? MM_PER_INCH : 1;
  const step = roundUp(LEAST_MARK_GAP / pxPerMm / unit);
  const count = Math.floor(span / unit / step);
  return Array.from({ length: count + 1 }, (_, i) => ({ mm: i * step * unit, label: String(i * step) }));
}
