/**
 * Where a line of sight first meets the triangles of a flat hierarchy, from either side of them: what lies under a pointer, in
 * the hierarchy's own frame and unit. Triangles by Möller and Trumbore (1997), boxes by their slabs.
 */
import type { Vec3 } from '../../shared/vec3';
import type { FlatTree } from './buildTree';

export type RayHit = {
  /** Along `way`, in its own length. */
  readonly t: number;
  readonly at: Vec3;
  /** Its number among the tree's triangles. */
  readonly triangle: number;
};

type Searched = {
  readonly [K in 'bounds' | 'link' | 'count' | 'soup']: ArrayLike<number>;
} & Pick<FlatTree, 'depth'>;

/** @param counts which places on the triangles are there at all; default: every one */
export function rayHit(
  tree: Searched,
  from: Vec3,
  way: Vec3,
  counts: (at: Vec3) => boolean = () => true,
): RayHit | null {
  const { bounds, link, count, soup, depth } = tree;
  if (link.length === 0) return null;
  const inverse = way.map((x) => 1 / x);
  const waiting = new Uint32Array(depth + 2);
  const entries = new Float64Array(depth + 2);
  let best: RayHit | null = null;
  let limit = Number.POSITIVE_INFINITY;
  let left = 0;
  const push = (n: number, entry: number): void => {
    if (!(entry < limit)) return;
    waiting[left] = n;
    entries[left++] = entry;
  };
  push(0, entryOf(bounds, 0, from, inverse));
  while (left > 0) {
    const n = waiting[--left]!;
    if (entries[left]! >= limit) continue;
    const held = count[n]!;
    if (held === 0) {
      const [one, two] = [n + 1, link[n]!];
      const [toOne, toTwo] = [entryOf(bounds, one, from, inverse), entryOf(bounds, two, from, inverse)];
      // The nearer is taken off first.
      if (toOne <= toTwo) {
        push(two, toTwo);
        push(one, toOne);
      } else {
        push(one, toOne);
        push(two, toTwo);
      }
      continue;
    }
    const first = link[n]!;
    for (let k = first; k < first + held; k++) {
      const t = meets(soup, 9 * k, from, way);
      if (!(t < limit)) continue;
      const at: Vec3 = [from[0] + t * way[0], from[1] + t * way[1], from[2] + t * way[2]];
      if (!counts(at)) continue;
      limit = t;
      best = { t, at, triangle: k };
    }
  }
  return best;
}

/** How far along the line it enters the box; Infinity where it does not. */
function entryOf(bounds: ArrayLike<number>, n: number, from: Vec3, inverse: readonly number[]): number {
  const o = 6 * n;
  let enter = 0;
  let leave = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 3; k++) {
    const a = (bounds[o + k]! - from[k]!) * inverse[k]!;
    const b = (bounds[o + 3 + k]! - from[k]!) * inverse[k]!;
    // Along a side that it starts on, 0 × ∞ is no number: that side keeps nothing out.
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  // Single precision rounds a flat box's sides onto each other.
  return enter <= leave * (1 + 1e-12) ? enter : Number.POSITIVE_INFINITY;
}

/** How far along the line it meets the triangle; not a number where it does not. */
function meets(soup: ArrayLike<number>, o: number, from: Vec3, way: Vec3): number {
  const [ax, ay, az] = [soup[o]!, soup[o + 1]!, soup[o + 2]!];
  const [ux, uy, uz] = [soup[o + 3]! - ax, soup[o + 4]! - ay, soup[o + 5]! - az];
  const [vx, vy, vz] = [soup[o + 6]! - ax, soup[o + 7]! - ay, soup[o + 8]! - az];
  const [px, py, pz] = [way[1] * vz - way[2] * vy, way[2] * vx - way[0] * vz, way[0] * vy - way[1] * vx];
  const det = ux * px + uy * py + uz * pz;
  if (det === 0) return Number.NaN;
  const [sx, sy, sz] = [from[0] - ax, from[1] - ay, from[2] - az];
  const u = (sx * px + sy * py + sz * pz) / det;
  if (!(u >= 0 && u <= 1)) return Number.NaN;
  const [qx, qy, qz] = [sy * uz - sz * uy, sz * ux - sx * uz, sx * uy - sy * ux];
  const v = (way[0] * qx + way[1] * qy + way[2] * qz) / det;
  if (!(v >= 0 && u + v <= 1)) return Number.NaN;
  const t = (vx * qx + vy * qy + vz * qz) / det;
  return t >= 0 ? t : Number.NaN;
}
