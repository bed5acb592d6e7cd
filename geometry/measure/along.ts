/** Places on one centerline: where its bends and straights lie, and what of it is nearest to a point. Stations in mm. */
import type { Vec3 } from '../../shared/vec3';
import { bends, straightIndices } from '../curve/bends';
import type { Centerline, Segment } from '../curve/centerline';
import { pointOnSegment } from '../curve/pointAt';
import { addScaled, distance, dot, sub } from '../vector';

export type PartStations = {
  readonly from: number;
  readonly to: number;
  /** Of a straight; null for a bend and for a whole runner, which point nowhere. */
  readonly way: Vec3 | null;
};

/** The stretch that a bend, a straight or (naming neither) the whole runner takes; null where there is no such part. */
export function partStations(
  line: Centerline,
  part: { readonly bend?: number; readonly straight?: number },
): PartStations | null {
  if (part.bend !== undefined) {
    const bend = bends(line)[part.bend];
    return bend ? { from: arcStart(line, bend.first), to: legStart(line, bend.last + 1), way: null } : null;
  }
  if (part.straight !== undefined) {
    const leg = straightIndices(line)[part.straight];
    if (leg === undefined) return null;
    const from = legStart(line, leg);
    return { from, to: from + line.straights[leg]!, way: line.directions[leg]! };
  }
  const only = line.turns.length === 0 ? line.directions[0]! : null;
  return { from: 0, to: line.length, way: only };
}

/** Where leg `i` between two points begins: all legs and arcs before it. */
function legStart(line: Centerline, i: number): number {
  let station = 0;
  for (let k = 0; k < i; k++) station += line.straights[k]! + line.radii[k]! * line.turns[k]!;
  return station;
}

const arcStart = (line: Centerline, i: number): number => legStart(line, i) + line.straights[i]!;

/** The station whose centerline point is nearest to `p`. */
export function nearestStation(line: Centerline, p: Vec3): number {
  let best = { station: 0, off: distance(p, line.points[0]!) };
  for (const segment of line.segments) {
    const along = nearestAlong(segment, p);
    const off = distance(p, pointOnSegment(segment, along).position);
    if (off < best.off) best = { station: segment.station + along, off };
  }
  return best.station;
}

/** mm from the segment's start, clamped to it; on an arc the nearer end where the foot lies outside. */
function nearestAlong(segment: Segment, p: Vec3): number {
  const q = sub(p, segment.start);
  if (segment.kind === 'straight') return clamp(dot(q, segment.direction), segment.length);
  const fromCentre = addScaled(q, segment.inward, -segment.radius);
  const turned = Math.atan2(dot(fromCentre, segment.direction), -dot(fromCentre, segment.inward));
  // Measured from the middle of the arc, so that what lies beyond an end goes to that end.
  const middle = segment.angle / 2;
  const off = Math.atan2(Math.sin(turned - middle), Math.cos(turned - middle));
  return clamp(segment.radius * (middle + off), segment.length);
}

const clamp = (x: number, high: number): number => Math.min(Math.max(x, 0), high);
