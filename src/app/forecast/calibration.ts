/** How far the engine was brought to agree with a measured curve, in a few words. */
import type { Engine, Fitted } from '../../../shared/design/types';
import { numberText } from './quantities';

export const NOT_CALIBRATED = 'Not calibrated';

const FACTORS = ['flow', 'friction', 'heat'] as const;

/** Points and free factors of a fit; null where the engine is not fitted, or its curve was taken away since. */
function countsOf(engine: Engine | undefined): { readonly points: number; readonly factors: number } | null {
  const { fitted, baseline } = engine ?? {};
  if (!fitted || !baseline || baseline.points.length === 0) return null;
  const factors = FACTORS.filter((key) => fitted[key] !== undefined).length;
  return { points: baseline.points.length, factors };
}

const pointsText = (count: number): string => `${count} ${count === 1 ? 'point' : 'points'}`;

/**
 * "Not calibrated", or "Calibrated on 9 points, off by 2.1 N m on average". With no more points than factors any engine can be
 * made to agree: that is said instead.
 * @param last the root of the mean square by which the last fit left the torque off, N m, if it is still in force
 */
export function calibrationWords(
  engine: Engine | undefined,
  last: { readonly fitted: Fitted; readonly rms: number } | null = null,
): string {
  const { fitted } = engine ?? {};
  if (!fitted) return NOT_CALIBRATED;
  const counts = countsOf(engine);
  if (!counts) return 'Calibrated on a curve that is not here any more';
  const { points, factors } = counts;
  if (points <= factors)
    return `Fitted to ${pointsText(points)} by ${factors} factors: ${points === factors ? 'as many factors as points' : 'more factors than points'}, so this agreement proves nothing`;
  const inForce = last && FACTORS.every((key) => last.fitted[key] === fitted[key]);
  const off = inForce ? `, off by ${numberText(last.rms, 1)}\u00a0N\u00a0m on average` : '';
  return `Calibrated on ${pointsText(points)}${off}`;
}

/** The same where there is room for a word or two. */
export function calibrationShort(engine: Engine | undefined): string {
  if (!engine?.fitted) return NOT_CALIBRATED;
  const counts = countsOf(engine);
  if (!counts) return 'Calibrated';
  return counts.points <= counts.factors ? 'Fitted, but proves nothing' : `Calibrated on ${pointsText(counts.points)}`;
}
