/**
 * Rough centerlines from ports to inlets, by which a layout problem is made: what stands around keeps clear of them, so that
 * there is a way. They are no layouts (no arcs, nothing keeps them apart) and are not stored. mm.
 */
import type { Pose } from '../../../geometry/header/merge';
import { addScaled, distance } from '../../../geometry/vector';
import type { Vec3 } from '../../../shared/vec3';

export type Line = { readonly points: readonly Vec3[]; readonly length: number; readonly radius: number };
/** Where a line passes and which way: a unit vector. */
export type Way = { readonly position: Vec3; readonly direction: Vec3 };

const STEPS = 40;
/** Straight at both ends, as tooling asks. */
const STRAIGHT = 25;

/** Through all ways; `pull` is how far it keeps each direction, as a part of the distance to the next. */
export function line(from: Pose, to: Pose, radius: number, pull: number, by: readonly Way[] = []): Line {
  const first = { position: addScaled(from.position, from.direction, STRAIGHT), direction: from.direction };
  const last = { position: addScaled(to.position, to.direction, -STRAIGHT), direction: to.direction };
  const ways = [first, ...by, last];
  const points: Vec3[] = [from.position];
  for (const [i, a] of ways.slice(0, -1).entries()) {
    const b = ways[i + 1]!;
    const reach = pull * distance(a.position, b.position);
    for (let k = 0; k <= STEPS; k++) points.push(bezier(a, b, reach, k / STEPS));
  }
  points.push(to.position);
  const length = points.slice(1).reduce((sum, p, i) => sum + distance(p, points[i]!), 0);
  return { points, length, radius };
}

function bezier(a: Way, b: Way, reach: number, t: number): Vec3 {
  const [p, q] = [addScaled(a.position, a.direction, reach), addScaled(b.position, b.direction, -reach)];
  const s = 1 - t;
  const at = (k: 0 | 1 | 2): number =>
    s ** 3 * a.position[k] + 3 * s * s * t * p[k] + 3 * s * t * t * q[k] + t ** 3 * b.position[k];
  return [at(0), at(1), at(2)];
}

const LEAST_PULL = 0.35;
const MOST_PULL = 1.6;

/** The line that comes nearest to a length by how far it keeps its directions. */
export function lineOfLength(from: Pose, to: Pose, radius: number, length: number, by: readonly Way[] = []): Line {
  let [low, high] = [LEAST_PULL, MOST_PULL];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (line(from, to, radius, middle, by).length < length) low = middle;
    else high = middle;
  }
  return line(from, to, radius, low, by);
}

export const shortLine = (from: Pose, to: Pose, radius: number, by: readonly Way[] = []): Line =>
  line(from, to, radius, LEAST_PULL, by);
