/** Even stations along a runner's centerline, with the places and ways there; kept with the runner. mm. */
import type { Vec3 } from '../../shared/vec3';
import { pointAt } from '../curve/pointAt';
import type { ResolvedRunner } from '../header/resolve';

export type Station = {
  readonly station: number;
  readonly at: Vec3;
  readonly way: Vec3;
  /** So near to a flat end that a ball about the place comes out of the tube. */
  readonly isByEnd: boolean;
};

const known = new WeakMap<ResolvedRunner, { step: number; stations: readonly Station[] }>();

/** First and last included, no further apart than `step`. */
export function sampleStations(r: ResolvedRunner, step: number): readonly Station[] {
  const kept = known.get(r);
  if (kept?.step === step) return kept.stations;
  const line = r.centerline!;
  const count = Math.max(1, Math.ceil(line.length / step));
  const stations = Array.from({ length: count + 1 }, (_, k): Station => {
    const station = (k * line.length) / count;
    const { position, tangent } = pointAt(line, station);
    return {
      station,
      at: position,
      way: tangent,
      isByEnd: station < r.tubeRadius || station > line.length - r.tubeRadius,
    };
  });
  known.set(r, { step, stations });
  return stations;
}
