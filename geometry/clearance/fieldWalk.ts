/**
 * A walk down a mesh's hierarchy by the distance to a convex thing. From one look at a box's middle follows what the distance is
 * at least within it, by the plane that touches it there, so that only boxes by the very places where it is least are opened: far
 * fewer than a ball about the whole thing holds. The mesh's own frame and unit. Nothing is allocated by box or triangle.
 */
import type { Vec3 } from '../../shared/vec3';
import type { FlatTree } from './buildTree';
import type { Field } from './convexMinimum';
import type { Rising } from './rising';
import { squaredToTriangle } from './triangle';

/** Shown a triangle: its corners and the distance to it (convex); good until the call returns. */
export type SeeNear = (a: Vec3, b: Vec3, c: Vec3, toIt: Field) => void;
export type FieldWalk = (rising: Rising, limit: () => number, see: SeeNear) => void;

type Corner = [number, number, number];

/** A walk inside a walk takes another one. */
export function makeFieldWalk({ bounds, link, count, soup, kinds, depth }: FlatTree): FieldWalk {
  const waiting = new Uint32Array(depth + 1);
  const lows = new Float64Array(depth + 1);
  const at = new Float64Array(3);
  const way = new Float64Array(3);
  let current = 0;
  const toIt: Field = (x, y, z) => Math.sqrt(squaredToTriangle(soup, 9 * current, kinds[current]!, x, y, z, at));
  const [a, b, c] = [0, 0, 0].map((): Corner => [0, 0, 0]) as [Corner, Corner, Corner];
  const lowOfBox = (rising: Rising, n: number): number => {
    const o = 6 * n;
    const x = (bounds[o + 3]! - bounds[o]!) / 2;
    const y = (bounds[o + 4]! - bounds[o + 1]!) / 2;
    const z = (bounds[o + 5]! - bounds[o + 2]!) / 2;
    const value = rising(bounds[o]! + x, bounds[o + 1]! + y, bounds[o + 2]! + z, way);
    if (value <= 0) return value - Math.sqrt(x * x + y * y + z * z);
    return value - Math.abs(way[0]!) * x - Math.abs(way[1]!) * y - Math.abs(way[2]!) * z;
  };
  const lowOfTriangle = (rising: Rising, t: number): number => {
    const o = 9 * t;
    const x = (soup[o]! + soup[o + 3]! + soup[o + 6]!) / 3;
    const y = (soup[o + 1]! + soup[o + 4]! + soup[o + 7]!) / 3;
    const z = (soup[o + 2]! + soup[o + 5]! + soup[o + 8]!) / 3;
    const value = rising(x, y, z, way);
    let fall = 0;
    for (let k = o; k < o + 9; k += 3) {
      const [dx, dy, dz] = [soup[k]! - x, soup[k + 1]! - y, soup[k + 2]! - z];
      const by = value > 0 ? dx * way[0]! + dy * way[1]! + dz * way[2]! : -Math.sqrt(dx * dx + dy * dy + dz * dz);
      fall = Math.min(fall, by);
    }
    return value + fall;
  };
  return (rising, limit, see) => {
    waiting[0] = 0;
    lows[0] = lowOfBox(rising, 0);
    let left = 1;
    while (left > 0) {
      const n = waiting[--left]!;
      if (lows[left]! >= limit()) continue;
      const held = count[n]!;
      if (held === 0) {
        const one = n + 1;
        const two = link[n]!;
        const ofOne = lowOfBox(rising, one);
        const ofTwo = lowOfBox(rising, two);
        const oneFirst = ofOne <= ofTwo;
        waiting[left] = oneFirst ? two : one;
        lows[left++] = oneFirst ? ofTwo : ofOne;
        waiting[left] = oneFirst ? one : two;
        lows[left++] = oneFirst ? ofOne : ofTwo;
        continue;
      }
      const first = link[n]!;
      for (let t = first; t < first + held; t++) {
        if (lowOfTriangle(rising, t) >= limit()) continue;
        current = t;
        const o = 9 * t;
        for (let k = 0; k < 3; k++) {
          a[k] = soup[o + k]!;
          b[k] = soup[o + 3 + k]!;
          c[k] = soup[o + 6 + k]!;
        }
        see(a, b, c, toIt);
      }
    }
  };
}
