/** A measured curve as a fit takes it: torque at the crank, as few speeds as tell its shape. rpm, N m. */
import { torqueProblems } from '../../../../shared/design/baselineRules';
import { DesignError, insist } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';

export type Measured = { readonly rpm: number; readonly torque: number };

/** Each takes seconds to follow, and a torque curve has no more to tell. */
export const MOST_SPEEDS = 8;

/**
 * At the crank.
 *
 * @param part of the engine's cylinders that the gas path covers, such as one bank's half: all are taken to do alike
 * @throws DesignError where there is none, or it is in another unit
 */
export function measuredOf({ engine = {} }: Design, part = 1): readonly Measured[] {
  const { baseline } = engine;
  if (!baseline)
    throw new DesignError([
      {
        path: 'engine/baseline',
        found: 'nothing',
        allowed: 'a torque curve measured on this engine, at least three points of [rpm, N m]',
      },
    ]);
  insist(torqueProblems(engine));
  const kept = 1 - (baseline.loss ?? 0) / 100;
  return baseline.points.map(([rpm, torque]) => ({ rpm, torque: (part * torque) / kept }));
}

/** The first, the last, and those nearest to evenly spaced speeds between. */
export function thinned(points: readonly Measured[], most = MOST_SPEEDS): readonly Measured[] {
  if (points.length <= most) return points;
  const [first, last] = [points[0]!.rpm, points.at(-1)!.rpm];
  const nearest = Array.from({ length: most }, (_, k) => {
    const wanted = first + ((last - first) * k) / (most - 1);
    return points.reduce((best, point) => (Math.abs(point.rpm - wanted) < Math.abs(best.rpm - wanted) ? point : best));
  });
  return nearest.filter((point, k) => point !== nearest[k - 1]);
}
