/**
 * A bounding-volume hierarchy over the triangles of a mesh surrounding, in the mesh's own frame and unit. Distance is
 * unsigned to the triangles themselves: a scan need not be closed. Queries leave no garbage: nodes are flat arrays (see
 * `buildTree`), the walk's stack is kept, and the same corners and field are shown again and again. `placedTree` asks the same
 * hierarchy from the design's frame.
 */
import type { Vec3 } from '../../shared/vec3';
import type { FlatTree } from './buildTree';
import type { Field } from './convexMinimum';
import { type FieldWalk, makeFieldWalk } from './fieldWalk';
import { flatTreeOf } from './flatTrees';
import { squaredToTriangle } from './triangle';

export { triangleField } from './triangle';

/**
 * Shown a triangle: its corners, the distance to it (convex), its number in the tree's own order, and where on it the visited
 * point is nearest. All are good until the call returns, then they are those of the next one; `place` until `field` is asked.
 */
export type See = (a: Vec3, b: Vec3, c: Vec3, field: Field, index: number, place: Float64Array) => void;

export type TriangleTree = {
  /**
   * Calls `see` for every triangle that comes nearer to `p` than `limit()` at its turn, those in nearer boxes first. The
   * limit may fall meanwhile, to −Infinity to end the visit.
   */
  visit(p: Vec3, limit: () => number, see: See): void;
  /**
   * Calls `see` for every triangle that a convex thing may come nearer to than `limit()` at its turn, those first that it may
   * be nearest to.
   * @param rising the distance to the thing, asked of places in the design's frame
   */
  visitWhere: FieldWalk;
  /**
   * Distance to the nearest triangle; Infinity where none is nearer than `below`.
   * @param place three numbers for where on the triangles it is; untouched where there is none
   */
  nearest(x: number, y: number, z: number, below?: number, place?: Float64Array): number;
  /** What is asked, and how it stands; null where it stands as it is, in mm. */
  readonly flat: FlatTree;
  readonly placement: Placement | null;
};

/** How a mesh stands in the design: its unit in mm, where its origin is, which way its axes point (unit, square, right-handed). */
export type Placement = {
  readonly scale: number;
  readonly position: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
};

/** @param soup nine numbers a triangle; left as it is, and its hierarchy remembered with it */
export const triangleTree = (soup: Float32Array): TriangleTree => treeOver(flatTreeOf(soup));

/** The hierarchy as it stands, in its own frame and unit. */
export function treeOver(flat: FlatTree): TriangleTree {
  /** A visit inside a visit takes walk and triangle of its own. */
  const idle: Visitor[] = [];
  const idleWalks: FieldWalk[] = [];
  const waiting = new Uint32Array(flat.depth + 1);
  const distances = new Float64Array(flat.depth + 1);
  const at = new Float64Array(3);
  return {
    flat,
    placement: null,
    visit(p, limit, see) {
      if (flat.link.length === 0) return;
      const visitor = idle.pop() ?? makeVisitor(flat);
      try {
        visitor(p, limit, see);
      } finally {
        idle.push(visitor);
      }
    },
    visitWhere(rising, limit, see) {
      if (flat.link.length === 0) return;
      const walk = idleWalks.pop() ?? makeFieldWalk(flat);
      try {
        walk(rising, limit, see);
      } finally {
        idleWalks.push(walk);
      }
    },
    nearest(x, y, z, below = Number.POSITIVE_INFINITY, place) {
      if (flat.link.length === 0 || !(below > 0)) return Number.POSITIVE_INFINITY;
      const { bounds, link, count, soup: corners, kinds } = flat;
      const limit = below * below;
      let best = limit;
      let n = 0;
      let left = 0;
      if (squaredToBox(bounds, 0, x, y, z) >= best) return Number.POSITIVE_INFINITY;
      for (;;) {
        const held = count[n]!;
        if (held > 0) {
          const first = link[n]!;
          for (let t = first; t < first + held; t++) {
            const squared = squaredToTriangle(corners, 9 * t, kinds[t]!, x, y, z, at);
            if (squared >= best) continue;
            best = squared;
            if (place) place.set(at);
          }
        } else {
          let near = n + 1;
          let far = link[n]!;
          let toNear = squaredToBox(bounds, near, x, y, z);
          let toFar = squaredToBox(bounds, far, x, y, z);
          if (toFar < toNear) {
            [near, far] = [far, near];
            [toNear, toFar] = [toFar, toNear];
          }
          if (toFar < best) {
            waiting[left] = far;
            distances[left++] = toFar;
          }
          if (toNear < best) {
            n = near;
            continue;
          }
        }
        while (left > 0 && distances[left - 1]! >= best) left--;
        if (left === 0) break;
        n = waiting[--left]!;
      }
      return best < limit ? Math.sqrt(best) : Number.POSITIVE_INFINITY;
    },
  };
}

function squaredToBox(bounds: Float32Array, n: number, x: number, y: number, z: number): number {
  const o = 6 * n;
  const dx = Math.max(bounds[o]! - x, 0, x - bounds[o + 3]!);
  const dy = Math.max(bounds[o + 1]! - y, 0, y - bounds[o + 4]!);
  const dz = Math.max(bounds[o + 2]! - z, 0, z - bounds[o + 5]!);
  return dx * dx + dy * dy + dz * dz;
}

type Visitor = TriangleTree['visit'];

function makeVisitor({ bounds, link, count, soup, kinds, depth }: FlatTree): Visitor {
  const waiting = new Uint32Array(depth + 1);
  const distances = new Float64Array(depth + 1);
  const at = new Float64Array(3);
  let current = 0;
  const field: Field = (x, y, z) => Math.sqrt(squaredToTriangle(soup, 9 * current, kinds[current]!, x, y, z, at));
  const [a, b, c] = [0, 0, 0].map((): [number, number, number] => [0, 0, 0]) as [Corner, Corner, Corner];
  return ([x, y, z], limit, see) => {
    waiting[0] = 0;
    distances[0] = Math.sqrt(squaredToBox(bounds, 0, x, y, z));
    let left = 1;
    while (left > 0) {
      const n = waiting[--left]!;
      if (distances[left]! >= limit()) continue;
      const held = count[n]!;
      if (held === 0) {
        const one = n + 1;
        const two = link[n]!;
        const toOne = Math.sqrt(squaredToBox(bounds, one, x, y, z));
        const toTwo = Math.sqrt(squaredToBox(bounds, two, x, y, z));
        const oneFirst = toOne <= toTwo;
        waiting[left] = oneFirst ? two : one;
        distances[left++] = oneFirst ? toTwo : toOne;
        waiting[left] = oneFirst ? one : two;
        distances[left++] = oneFirst ? toOne : toTwo;
        continue;
      }
      const first = link[n]!;
      for (let t = first; t < first + held; t++) {
        current = t;
        // One look from the point is far cheaper than what callers do with a triangle.
        if (field(x, y, z) >= limit()) continue;
        const o = 9 * t;
        for (let k = 0; k < 3; k++) {
          a[k] = soup[o + k]!;
          b[k] = soup[o + 3 + k]!;
          c[k] = soup[o + 6 + k]!;
        }
        see(a, b, c, field, t, at);
      }
    }
  };
}

type Corner = [number, number, number];
