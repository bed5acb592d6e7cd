/** The first triangle on a line of sight, against looking at every triangle; and what is cropped away is seen through. */
import { describe, expect, it } from 'vitest';
import { buildTree } from '../../../geometry/clearance/buildTree';
import { rayHit } from '../../../geometry/clearance/rayTree';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';

function slivers(count: number, rnd: () => number): Float32Array {
  const soup = new Float32Array(9 * count);
  for (let t = 0; t < count; t++) {
    const at = [rnd() * 400, rnd() * 300, rnd() * 200];
    for (let k = 0; k < 9; k++) soup[9 * t + k] = at[k % 3]! + (rnd() - 0.5) * 40;
  }
  return soup;
}

/** By the plane and three half planes: another way than the one tried. */
function brute(soup: ArrayLike<number>, from: Vec3, way: Vec3): number {
  let best = Number.POSITIVE_INFINITY;
  const corner = (o: number): Vec3 => [soup[o]!, soup[o + 1]!, soup[o + 2]!];
  const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  const times = (a: Vec3, b: Vec3): Vec3 => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  for (let o = 0; o < soup.length; o += 9) {
    const at = [corner(o), corner(o + 3), corner(o + 6)] as const;
    const normal = times(minus(at[1], at[0]), minus(at[2], at[0]));
    const t = dot(minus(at[0], from), normal) / dot(way, normal);
    if (!(t >= 0 && t < best)) continue;
    const p: Vec3 = [from[0] + t * way[0], from[1] + t * way[1], from[2] + t * way[2]];
    const inside = [0, 1, 2].every((k) => dot(times(minus(at[(k + 1) % 3]!, at[k]!), minus(p, at[k]!)), normal) >= 0);
    if (inside) best = t;
  }
  return best;
}

describe('a line of sight through triangles', () => {
  it('meets the same one as looking at all of them, seed 4711', () => {
    const rnd = random(4711);
    const soup = slivers(3000, rnd);
    const tree = buildTree(soup);
    let hits = 0;
    for (let n = 0; n < 1000; n++) {
      const from: Vec3 = [rnd() * 800 - 200, rnd() * 700 - 200, rnd() * 600 - 200];
      const way: Vec3 = [rnd() - 0.5, rnd() - 0.5, rnd() - 0.5];
      const found = rayHit(tree, from, way);
      const wanted = brute(soup, from, way);
      expect(found === null).toBe(wanted === Number.POSITIVE_INFINITY);
      if (!found) continue;
      hits++;
      expect(Math.abs(found.t - wanted)).toBeLessThan(1e-6 * Math.max(1, wanted));
    }
    expect(hits).toBeGreaterThan(100);
  });

  it('along an axis, from the very side of a box, and from behind', () => {
    const wall = Float32Array.from([0, 0, 0, 10, 0, 0, 0, 10, 0]);
    const tree = buildTree(wall);
    expect(rayHit(tree, [2, 2, 5], [0, 0, -1])).toMatchObject({ t: 5, at: [2, 2, 0], triangle: 0 });
    expect(rayHit(tree, [2, 2, -5], [0, 0, 1])?.t).toBe(5);
    expect(rayHit(tree, [0, 2, 5], [0, 0, -1])?.t).toBe(5);
    expect(rayHit(tree, [2, 2, 5], [0, 0, 1])).toBeNull();
    expect(rayHit(tree, [8, 8, 5], [0, 0, -1])).toBeNull();
  });

  it('goes through what does not count, to what lies behind', () => {
    const two = Float32Array.from([0, 0, 0, 9, 0, 0, 0, 9, 0, 0, 0, -4, 9, 0, -4, 0, 9, -4]);
    const tree = buildTree(two);
    expect(rayHit(tree, [1, 1, 1], [0, 0, -1], (at) => at[2] < -1)?.t).toBe(5);
    expect(rayHit(tree, [1, 1, 1], [0, 0, -1], () => false)).toBeNull();
  });

  it('meets nothing of no triangles', () => {
    expect(rayHit(buildTree(new Float32Array(0)), [0, 0, 0], [1, 0, 0])).toBeNull();
  });
});
