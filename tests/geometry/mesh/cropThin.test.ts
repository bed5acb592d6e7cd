/** Cropping and thinning: what stays is what reaches in, and nothing moves farther than was said, measured both ways. */
import { describe, expect, test } from 'vitest';
import { countedSoup, placeMesh } from '../../../geometry';
import { triangleTree } from '../../../geometry/clearance/triangleTree';
import { cropSoup } from '../../../geometry/mesh/cropSoup';
import { thinSoup } from '../../../geometry/mesh/thinSoup';
import type { MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';

/** A sheet of 2·n² triangles. */
function sheet(n: number, at: (u: number, v: number) => Vec3): Float32Array {
  const soup: number[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const corner = (a: number, b: number) => at((i + a) / n, (j + b) / n);
      soup.push(...corner(0, 0), ...corner(1, 0), ...corner(1, 1), ...corner(0, 0), ...corner(1, 1), ...corner(0, 1));
    }
  return Float32Array.from(soup);
}

const bumpy = sheet(80, (u, v) => [300 * u, 300 * v, 5 + 10 * Math.sin(9 * u) * Math.cos(7 * v)]);
/** A pipe 4 mm across and 300 long, thinner than what it is thinned by. */
const pipe = sheet(40, (u, v) => [300 * u, 2 * Math.cos(2 * Math.PI * v), 2 * Math.sin(2 * Math.PI * v)]);

function somePlace(next: Random, soup: Float32Array): Vec3 {
  const t = 9 * next.whole(0, soup.length / 9 - 1);
  const [a, b] = [next(), next()];
  const [u, v] = a + b > 1 ? [1 - a, 1 - b] : [a, b];
  const on = (k: number): number =>
    soup[t + k]! + u * (soup[t + 3 + k]! - soup[t + k]!) + v * (soup[t + 6 + k]! - soup[t + k]!);
  return [on(0), on(1), on(2)];
}

function farthest(next: Random, from: Float32Array, to: Float32Array): number {
  const tree = triangleTree(to);
  let most = 0;
  for (let i = 0; i < 4000; i++) most = Math.max(most, tree.nearest(...somePlace(next, from)));
  return most;
}

describe.each([
  ['a bumpy sheet', bumpy],
  ['a thin pipe', pipe],
])('%s thinned', (_, soup) => {
  test.each([0.5, 2, 6, 20])('by %d mm: no place of it moves farther, either way, seed 3', (most) => {
    const next = random(3);
    const thin = thinSoup(soup, most);
    expect(thin.length).toBeGreaterThan(0);
    expect(farthest(next, soup, thin)).toBeLessThanOrEqual(most);
    expect(farthest(next, thin, soup)).toBeLessThanOrEqual(most);
  });

  test('has fewer triangles, the coarser', () => {
    const counts = [2, 6, 20].map((most) => thinSoup(soup, most).length / 9);
    expect(counts[0]).toBeGreaterThanOrEqual(counts[1]!);
    expect(counts[1]).toBeGreaterThan(counts[2]!);
    expect(counts[2]).toBeLessThan(soup.length / 9 / 20);
  });
});

test('a grid finer than the mesh leaves it as it is', () => {
  const flat = sheet(40, (u, v) => [300 * u, 300 * v, 3]);
  expect(thinSoup(flat, 0.5)).toEqual(flat);
  expect(thinSoup(flat, 1e-9)).toBe(flat);
});

test('a triangle smaller than a cell stays as a point, and what is many times there as one', () => {
  const small = [5, 5, 5, 5.1, 5, 5, 5, 5.1, 5];
  expect(thinSoup(Float32Array.from([...small, ...small]), 10)).toHaveLength(9);
});

describe('a crop', () => {
  const next = random(8);
  const soup = Float32Array.from({ length: 9 * 3000 }, (_, i) => (i % 9 < 3 ? next.between(-100, 100) : 0));
  for (let t = 0; t < soup.length; t += 9)
    for (let k = 3; k < 9; k++) soup[t + k] = soup[t + (k % 3)]! + next.between(-40, 40);
  const [low, high]: [Vec3, Vec3] = [
    [-20, -30, 10],
    [25, 12, 60],
  ];

  test('keeps whole every triangle with a place in the box, and no other, seed 8', () => {
    const cropped = cropSoup(soup, low, high);
    const stays = new Set(
      Array.from({ length: cropped.length / 9 }, (_, t) => cropped.subarray(9 * t, 9 * t + 9).join()),
    );
    let [inside, outside] = [0, 0];
    for (let t = 0; t < soup.length; t += 9) {
      const own = soup.subarray(t, t + 9);
      const found = leastToBox(own);
      if (found === 0) {
        inside++;
        expect(stays.has(own.join())).toBe(true);
      } else if (found > 2) {
        outside++;
        expect(stays.has(own.join())).toBe(false);
      }
    }
    expect(inside).toBeGreaterThan(100);
    expect(outside).toBeGreaterThan(1000);
  });

  test('takes its corners in any order', () => {
    expect(cropSoup(soup, [high[0], low[1], high[2]], [low[0], high[1], low[2]])).toEqual(cropSoup(soup, low, high));
  });

  /** The least distance to the box of many places on the triangle, a millimetre or two from one another. */
  function leastToBox(t: Float32Array): number {
    let least = Number.POSITIVE_INFINITY;
    const n = 60;
    for (let i = 0; i <= n; i++)
      for (let j = 0; j <= n - i; j++) {
        let sum = 0;
        for (let k = 0; k < 3; k++) {
          const x = t[k]! + (i / n) * (t[3 + k]! - t[k]!) + (j / n) * (t[6 + k]! - t[k]!);
          sum += Math.max(low[k]! - x, 0, x - high[k]!) ** 2;
        }
        least = Math.min(least, Math.sqrt(sum));
        if (least === 0) return 0;
      }
    return least;
  }
});

test('a design’s crop and thinning are in mm whatever the file’s unit, made once and remembered', () => {
  const inches = bumpy.map((x) => x / 25.4);
  const scan: MeshSurrounding = {
    id: 'bay',
    shape: 'mesh',
    file: 'bay.stl',
    unit: 'in',
    crop: [
      [0, 0, -50],
      [100, 100, 50],
    ],
    thin: 4,
  };
  const counted = countedSoup(scan, inches);
  expect(countedSoup({ ...scan, pose: { position: [9, 9, 9] } }, inches)).toBe(counted);
  expect(countedSoup({ ...scan, crop: undefined, thin: undefined } as never, inches)).toBe(inches);
  const placed = placeMesh(scan, inches);
  expect(Math.max(...placed.filter((_, i) => i % 3 < 2))).toBeLessThan(110);
  const whole = thinSoup(cropSoup(bumpy, [0, 0, -50], [100, 100, 50]), 4);
  expect(Math.abs(placed.length - whole.length) / whole.length).toBeLessThan(0.05);
});
