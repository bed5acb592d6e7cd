/** How far the engine was brought to agree with a measured curve, in a few words. */
import type { Engine, Fitted } from '../../../shared/design/types';
import { numberText } from './quantities';

/** "Not calibrated", or "Calibrated on 9 points, 2.1 N m rms". @param last how far off the last fit left the torque, if it is still in force */
export function calibrationWords(
  engine: Engine | undefined,
  last: { readonly fitted: Fitted; readonly rms: number } | null = null,
): string {
  const { fitted, baseline } = engine ?? {};
  if (!fitted) return 'Not calibrated';
  const points = baseline?.points.length ?? 0;
  if (points === 0) return 'Calibrated';
  const inForce = last && (['flow', 'friction', 'heat'] as const).every((key) => last.fitted[key] === fitted[key]);
  const off = inForce ? `, ${numberText(last.rms, 1)}\u00a0N\u00a0m rms` : '';
  return `Calibrated on ${points} ${points === 1 ? 'point' : 'points'}${off}`;
}
