/**
 * Points and radii → straights and arcs: the one description of a runner that everything else measures.
 * Lengths in mm, angles in radians, all vectors in the design's frame.
 */
import type { Vec3 } from '../../shared/vec3';
import { LEAST_TURN_DEG, RADIANS } from '../tolerance';
import { addScaled, angleBetween, dot, norm, sub, unit } from '../vector';

export type Straight = {
  readonly kind: 'straight';
  readonly start: Vec3;
  /** Unit vector of travel. */
  readonly direction: Vec3;
  /** Arc length from the runner's start to this segment's. */
  readonly station: number;
  readonly length: number;
};

export type Arc = {
  readonly kind: 'arc';
  readonly start: Vec3;
  /** Unit vector of travel at the start. */
  readonly direction: Vec3;
  /** Unit vector from the start toward the centre of the bend. */
  readonly inward: Vec3;
  readonly radius: number;
  readonly angle: number;
  readonly station: number;
  readonly length: number;
};

export type Segment = Straight | Arc;

export type Centerline = {
  /** Start, every tangent intersection that turns, end. */
  readonly points: readonly Vec3[];
  /** For each of `points`, its index in the points given: points that do not turn are dropped. */
  readonly source: readonly number[];
  /** One for each interior point. */
  readonly radii: readonly number[];
  /** Unit vectors of the legs between points; zero where two points coincide. */
  readonly directions: readonly Vec3[];
  /** Turning angle θ at each interior point. */
  readonly turns: readonly number[];
  /** Tangent length R·tan(θ/2) at each interior point. */
  readonly setbacks: readonly number[];
  /** What is left of each leg between tangent points; negative where the bends do not fit. */
  readonly straights: readonly number[];
  /** Straights (of positive length) and arcs in order of travel. */
  readonly segments: readonly Segment[];
  /** All straights, as signed, and all arcs: exact also while bends do not fit yet. */
  readonly length: number;
};

/** Beyond this the tangents meet nowhere near: the setback is clamped so that it stays finite, and `angle` reports it. */
const LONGEST_SETBACK_TURN = 179.9 * RADIANS;

export const setback = (radius: number, turn: number): number =>
  radius * Math.tan(Math.min(turn, LONGEST_SETBACK_TURN) / 2);

/**
 * Lays straights and tangent arcs along a polyline of tangent intersections.
 * @param points at least two, mm
 * @param radii one for each interior point, mm
 */
export function centerline(points: readonly Vec3[], radii: readonly number[]): Centerline {
  if (points.length < 2) throw new RangeError(`A centerline needs two points, got ${points.length}`);
  if (radii.length !== points.length - 2)
    throw new RangeError(`${points.length} points need ${points.length - 2} radii, got ${radii.length}`);

  const source = turningPoints(points);
  const kept = source.map((i) => points[i]!);
  const keptRadii = source.slice(1, -1).map((i) => radii[i - 1]!);
  const directions = kept.slice(1).map((p, i) => unit(sub(p, kept[i]!)));
  const turns = keptRadii.map((_, i) => angleBetween(directions[i]!, directions[i + 1]!));
  const setbacks = keptRadii.map((r, i) => setback(r, turns[i]!));
  const straights = directions.map(
    (_, i) => norm(sub(kept[i + 1]!, kept[i]!)) - (setbacks[i - 1] ?? 0) - (setbacks[i] ?? 0),
  );

  const segments: Segment[] = [];
  let station = 0;
  for (let i = 0; i < directions.length; i++) {
    const direction = directions[i]!;
    const length = straights[i]!;
    if (length > 0) {
      segments.push({
        kind: 'straight',
        start: addScaled(kept[i]!, direction, setbacks[i - 1] ?? 0),
        direction,
        station,
        length,
      });
    }
    station += length;
    if (i === turns.length) break;
    const radius = keptRadii[i]!;
    const angle = turns[i]!;
    const next = directions[i + 1]!;
    segments.push({
      kind: 'arc',
      start: addScaled(kept[i + 1]!, direction, -setbacks[i]!),
      direction,
      inward: unit(addScaled(next, direction, -dot(next, direction))),
      radius,
      angle,
      station,
      length: radius * angle,
    });
    station += radius * angle;
  }
  return { points: kept, source, radii: keptRadii, directions, turns, setbacks, straights, segments, length: station };
}

/** Indices of the first point, every point that turns by at least the contract's 0.01°, and the last. */
function turningPoints(points: readonly Vec3[]): number[] {
  const kept = [0];
  for (let i = 1; i < points.length - 1; i++) {
    const before = sub(points[i]!, points[kept.at(-1)!]!);
    const after = sub(points[i + 1]!, points[i]!);
    if (angleBetween(before, after) >= LEAST_TURN_DEG * RADIANS) kept.push(i);
  }
  kept.push(points.length - 1);
  return kept;
}
