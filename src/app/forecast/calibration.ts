/** How far the engine was brought to agree with a measured curve, in a few words. */
import type { Engine } from '../../../shared/design/types';

/** "Not calibrated", or "Calibrated on 9 points". */
export function calibrationWords(engine: Engine | undefined): string {
  if (!engine?.fitted) return 'Not calibrated';
  const points = engine.baseline?.points.length ?? 0;
  return points > 0 ? `Calibrated on ${points} ${points === 1 ? 'point' : 'points'}` : 'Calibrated';
}
