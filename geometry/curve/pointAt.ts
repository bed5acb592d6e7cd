/** Walking a centerline: position and direction of travel at an arc length, and points dense enough to draw or measure. */
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, scale } from '../vector';
import type { Centerline, Segment } from './centerline';

export type Station = {
  /** Arc length from the start, mm. */
  readonly station: number;
  readonly position: Vec3;
  /** Unit vector of travel. */
  readonly tangent: Vec3;
};

/** On one segment, `along` mm from the segment's own start. */
export function pointOnSegment(segment: Segment, along: number): Station {
  const station = segment.station + along;
  const { start, direction } = segment;
  if (segment.kind === 'straight') return { station, position: addScaled(start, direction, along), tangent: direction };
  const phi = along / segment.radius;
  const { inward, radius } = segment;
  const c = Math.cos(phi);
  const s = Math.sin(phi);
  return {
    station,
    position: add(start, add(scale(direction, radius * s), scale(inward, radius * (1 - c)))),
    tangent: add(scale(direction, c), scale(inward, s)),
  };
}

/** The position alone, without garbage. */
export function writeOnSegment(segment: Segment, along: number, into: Float64Array): void {
  const { start, direction } = segment;
  if (segment.kind === 'straight') {
    for (let k = 0; k < 3; k++) into[k] = start[k]! + along * direction[k]!;
    return;
  }
  const { inward, radius } = segment;
  const phi = along / radius;
  const onward = radius * Math.sin(phi);
  const aside = radius * (1 - Math.cos(phi));
  for (let k = 0; k < 3; k++) into[k] = start[k]! + onward * direction[k]! + aside * inward[k]!;
}

/** At arc length `station`, clamped to the centerline's ends. */
export function pointAt(line: Centerline, station: number): Station {
  const segment = line.segments.find((s) => station <= s.station + s.length) ?? line.segments.at(-1);
  if (!segment) return { station: 0, position: line.points[0]!, tangent: line.directions[0]! };
  return pointOnSegment(segment, Math.min(Math.max(station - segment.station, 0), segment.length));
}

/** Chords that keep an arc's sagitta R·(1 − cos(Δ/2)) within `sagitta` mm; at least one. */
export function chordCount(radius: number, angle: number, sagitta: number): number {
  const step = 2 * Math.acos(Math.max(-1, 1 - sagitta / radius));
  return Math.max(1, Math.ceil(angle / step - 1e-9));
}

/** Stations at every tangent point and along each arc so that chords stray at most `sagitta` mm; joints appear once. */
export function sampleCenterline(line: Centerline, sagitta: number): Station[] {
  const stations: Station[] = [];
  for (const segment of line.segments) {
    if (stations.length === 0) stations.push(pointOnSegment(segment, 0));
    const count = segment.kind === 'arc' ? chordCount(segment.radius, segment.angle, sagitta) : 1;
    // A straight may be no longer than rounding: its end is where the arc before it ends.
    if (segment.station + segment.length <= stations.at(-1)!.station) continue;
    for (let k = 1; k <= count; k++) stations.push(pointOnSegment(segment, (segment.length * k) / count));
  }
  return stations;
}
