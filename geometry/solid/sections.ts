/**
 * How finely a swept tube is cut: the number of sides around and of steps along each arc, both from one chord error.
 * Half of the error goes to the ring and half to the arc, so that together no point of the mesh strays farther than the
 * whole from the true surface; equal halves need the fewest triangles. mm, radians.
 */
import type { Centerline } from '../curve/centerline';
import { chordCount, pointOnSegment, type Station } from '../curve/pointAt';
import { LEAST_MESH_STEP } from '../tolerance';

/**
 * However small the tube, a ring has so many sides and a bend turns at most so far in a step: an inscribed ring falls short
 * of its circle's area by (2π/N)²/6, a bend of its arc by δ²/6, and together they must stay within a thousandth.
 */
const LEAST_SIDES = 100;
const LONGEST_STEP = 0.042;

/** Sides of a ring whose chords stay within `sagitta` of the circle: a multiple of four, so that both frame axes measure the true diameter. */
export function ringSides(radius: number, sagitta: number): number {
  return Math.max(LEAST_SIDES, 4 * Math.ceil(chordCount(radius, 2 * Math.PI, sagitta) / 4));
}

/** Steps along a bend so that the chords of its outside (the extrados) stay within `sagitta` of their circle. */
export function arcSteps(bendRadius: number, tubeRadius: number, angle: number, sagitta: number): number {
  return Math.max(Math.ceil(angle / LONGEST_STEP), chordCount(bendRadius + tubeRadius, angle, sagitta));
}

/**
 * The stations at which the tube gets a ring: both ends, every tangent point once, and steps along each arc.
 * Straights too short to mesh (a continuous bend's joint, rounding) are bridged; the end is always the true end.
 */
export function tubeStations(line: Centerline, tubeRadius: number, sagitta: number): Station[] {
  const stations: Station[] = [];
  let reached = Number.NEGATIVE_INFINITY;
  const add = (next: Station) => {
    if (next.station - reached < LEAST_MESH_STEP) return;
    stations.push(next);
    reached = next.station;
  };
  for (const segment of line.segments) {
    const steps = segment.kind === 'arc' ? arcSteps(segment.radius, tubeRadius, segment.angle, sagitta) : 1;
    for (let k = 0; k <= steps; k++) add(pointOnSegment(segment, (segment.length * k) / steps));
  }
  const last = line.segments.at(-1);
  if (last) stations[stations.length - 1] = pointOnSegment(last, last.length);
  return stations;
}
