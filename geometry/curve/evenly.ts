/** Places along a centerline, nearly evenly: for what is looked at everywhere along a tube. mm. */
import type { Centerline } from './centerline';
import { pointOnSegment } from './pointAt';

/** @param step the most between two; tangent points are among them */
export function sampleEvenly(line: Centerline, step: number): { at: Float64Array; station: Float64Array } {
  const at: number[] = [];
  const station: number[] = [];
  for (const segment of line.segments) {
    const steps = Math.max(1, Math.ceil(segment.length / step));
    for (let k = station.length === 0 ? 0 : 1; k <= steps; k++) {
      const p = pointOnSegment(segment, (segment.length * k) / steps);
      at.push(...p.position);
      station.push(p.station);
    }
  }
  return { at: Float64Array.from(at), station: Float64Array.from(station) };
}
