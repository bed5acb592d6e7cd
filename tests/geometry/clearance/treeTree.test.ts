/** Two meshes against each other, wherever they stand: against every pair of triangles cut into patches, and known cases. */
import { describe, expect, test } from 'vitest';
import { treeOf } from '../../../geometry';
import { treeToTree } from '../../../geometry/clearance/treeTree';
import { triangleField, triangleTree } from '../../../geometry/clearance/triangleTree';
import { distance } from '../../../geometry/vector';
import type { MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { randomPoint } from './lines';

function scattered(next: Random, count: number, about: Vec3): number[] {
  return Array.from({ length: count }, () => {
    const a = randomPoint(next, 60).map((x, k) => x + about[k]!);
    return [...a, ...a.map((x) => x + next.between(-15, 15)), ...a.map((x) => x + next.between(-15, 15))];
  }).flat();
}
const corner = (soup: readonly number[], i: number): Vec3 => [soup[3 * i]!, soup[3 * i + 1]!, soup[3 * i + 2]!];

/** Over places of one mesh, the least distance to the other, both ways: no less than the truth, and little above it. */
function sampled(one: readonly number[], other: readonly number[], n: number): number {
  const fields = Array.from({ length: other.length / 9 }, (_, t) =>
    triangleField(corner(other, 3 * t), corner(other, 3 * t + 1), corner(other, 3 * t + 2)),
  );
  let least = Number.POSITIVE_INFINITY;
  for (let t = 0; t < one.length / 9; t++)
    for (let i = 0; i <= n; i++)
      for (let j = 0; j <= n - i; j++) {
        const p = [0, 1, 2].map((k) => {
          const [a, b, c] = [one[9 * t + k]!, one[9 * t + 3 + k]!, one[9 * t + 6 + k]!];
          return a + (i / n) * (b - a) + (j / n) * (c - a);
        }) as unknown as Vec3;
        for (const field of fields) least = Math.min(least, field(...p));
      }
  return least;
}

test.each([1, 2, 3, 4, 5, 6])('two heaps of triangles, seed %i', (seed) => {
  const next = random(seed);
  const one = scattered(next, 25, [0, 0, 0]).map(Math.fround);
  const other = scattered(next, 25, [150, 40, next.between(-20, 20)]).map(Math.fround);
  const found = treeToTree(triangleTree(Float32Array.from(one)), triangleTree(Float32Array.from(other)))!;
  const slow = Math.min(sampled(one, other, 24), sampled(other, one, 24));
  expect(found.value).toBeLessThanOrEqual(slow + 1e-9);
  expect(found.value).toBeGreaterThan(slow - 1);
  expect(distance(found.from, found.to)).toBeCloseTo(found.value, 9);
  // Each place is on its own mesh: an independent look.
  expect(triangleTree(Float32Array.from(one)).nearest(...found.from)).toBeLessThan(1e-6);
  expect(triangleTree(Float32Array.from(other)).nearest(...found.to)).toBeLessThan(1e-6);
});

describe('known cases', () => {
  const face = [0, 0, 0, 10, 0, 0, 0, 10, 0];
  const tree = (soup: number[]) => triangleTree(Float32Array.from(soup));
  test('corner over face', () => {
    const { value, from, to } = treeToTree(tree(face), tree([2, 3, 4, 20, 30, 40, 25, 30, 40]))!;
    expect(value).toBeCloseTo(4, 9);
    expect([...from, ...to]).toEqual([2, 3, 0, 2, 3, 4]);
  });
  test('edge across edge', () => {
    const other = [5, -2, -10, 5, -2, 10, 5, -50, 0];
    const { value } = treeToTree(tree(face), tree(other))!;
    expect(value).toBeCloseTo(2, 6);
  });
  test('an edge through a face, far from every edge and corner: 0, where it goes through', () => {
    const big = [-500, -500, 0, 500, -500, 0, 0, 900, 0];
    const { value, from } = treeToTree(tree(big), tree([1, 2, -300, 1, 2, 300, 400, 2, 300]))!;
    expect(value).toBe(0);
    expect(from[0]).toBeCloseTo(1, 9);
    expect(from[2]).toBeCloseTo(0, 9);
  });
  test('no triangles', () => expect(treeToTree(tree(face), tree([]))).toBeNull());
});

test('moved, turned and in inches: as the same meshes brought there', () => {
  const next = random(12);
  const soup = Float32Array.from(scattered(next, 400, [0, 0, 0]), (x) => x / 25.4);
  const wall = triangleTree(Float32Array.from(scattered(next, 400, [300, 0, 0])));
  const scan = (pose: MeshSurrounding['pose']): MeshSurrounding => ({
    id: 's',
    shape: 'mesh',
    file: 's.stl',
    unit: 'in',
    ...(pose ? { pose } : {}),
  });
  for (let i = 0; i < 6; i++) {
    const pose = { position: randomPoint(next, 100), x: randomPoint(next, 1), y: randomPoint(next, 1) };
    const tree = treeOf(scan(pose), soup);
    const found = treeToTree(tree, wall)!;
    expect(wall.nearest(...found.from)).toBeCloseTo(found.value, 6);
    expect(tree.nearest(...found.to)).toBeCloseTo(found.value, 6);
    const back = treeToTree(wall, tree)!;
    expect(back.value).toBeCloseTo(found.value, 6);
  }
});
