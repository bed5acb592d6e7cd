/** A mesh moved, turned and in another unit, asked from the design: against its triangles brought there one by one. */
import { describe, expect, test } from 'vitest';
import { adoptTree, flatTreeOf, hasTree, placeMesh, treeOf, unitOf } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { triangleField, triangleTree } from '../../../geometry/clearance/triangleTree';
import { tubeToMesh } from '../../../geometry/clearance/tubeMesh';
import { distance } from '../../../geometry/vector';
import type { LengthUnit, MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { randomLine, randomPoint } from './lines';

const MM = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;

const scan = (more: Partial<MeshSurrounding> = {}): MeshSurrounding => ({
  id: 'scan',
  shape: 'mesh',
  file: 'bay.stl',
  ...more,
});

/** In the file's unit, a few hundred mm about the origin. */
function scattered(next: Random, unit: LengthUnit, count: number): Float32Array {
  const k = 1 / MM[unit];
  return Float32Array.from(
    Array.from({ length: count }, () => {
      const a = randomPoint(next, 200);
      const by = () => next.between(-30, 30);
      return [a, a, a].map((p, i) => (i === 0 ? p : [p[0] + by(), p[1] + by(), p[2] + by()]));
    })
      .flat(2)
      .map((x) => x * k),
  );
}

/** Brought into the design by hand: Rodrigues' own way is the tree's; here by the pose's axes as a plain matrix. */
function brought(soup: Float32Array, unit: LengthUnit, position: Vec3, x: Vec3, y: Vec3): Vec3[] {
  const size = Math.hypot(...x);
  const ex = x.map((c) => c / size);
  const lean = ex.reduce((sum, c, i) => sum + c * y[i]!, 0);
  const square = y.map((c, i) => c - lean * ex[i]!);
  const height = Math.hypot(...square);
  const ey = square.map((c) => c / height);
  const ez = [ex[1]! * ey[2]! - ex[2]! * ey[1]!, ex[2]! * ey[0]! - ex[0]! * ey[2]!, ex[0]! * ey[1]! - ex[1]! * ey[0]!];
  return Array.from({ length: soup.length / 3 }, (_, i) => {
    const [a, b, c] = [soup[3 * i]!, soup[3 * i + 1]!, soup[3 * i + 2]!].map((v) => v * MM[unit]);
    const along = (k: number): number => position[k]! + a! * ex[k]! + b! * ey[k]! + c! * ez[k]!;
    return [along(0), along(1), along(2)];
  });
}

const UNITS: LengthUnit[] = ['mm', 'cm', 'm', 'in'];

describe.each(UNITS)('a mesh in %s', (unit) => {
  test.each([1, 2, 3])('moved and turned: nearest places and visits are the brute force’s, seed %i', (seed) => {
    const next = random(seed);
    const soup = scattered(next, unit, 300);
    const [position, x, y] = [randomPoint(next, 500), randomPoint(next, 1), randomPoint(next, 1)];
    const tree = treeOf(scan({ unit, pose: { position, x, y } }), soup);
    const corners = brought(soup, unit, position, x, y);
    const fields = Array.from({ length: corners.length / 3 }, (_, t) =>
      triangleField(corners[3 * t]!, corners[3 * t + 1]!, corners[3 * t + 2]!),
    );
    const place = new Float64Array(3);
    for (let i = 0; i < 60; i++) {
      const p = randomPoint(next, 700);
      const slow = Math.min(...fields.map((field) => field(...p)));
      expect(tree.nearest(...p, undefined, place)).toBeCloseTo(slow, 6);
      const at: Vec3 = [place[0]!, place[1]!, place[2]!];
      expect(distance(p, at)).toBeCloseTo(slow, 6);
      expect(Math.min(...fields.map((field) => field(...at)))).toBeLessThan(1e-6);
      const limit = slow + 25;
      let seen = 0;
      tree.visit(
        p,
        () => limit,
        (a, b, c, field, _, on) => {
          seen++;
          const own = triangleField(a, b, c);
          expect(field(...p)).toBeCloseTo(own(...p), 6);
          expect(own(on[0]!, on[1]!, on[2]!)).toBeLessThan(1e-6);
        },
      );
      expect(seen).toBe(fields.filter((field) => field(...p) < limit).length);
    }
  });

  test('a tube’s gap is the same whether the mesh is moved or its file was', () => {
    const next = random(11);
    for (let round = 0; round < 8; round++) {
      const soup = scattered(next, unit, 200);
      const pose = { position: randomPoint(next, 60), x: randomPoint(next, 1), y: randomPoint(next, 1) };
      const tube = chain(randomLine(next, 20, 90), 20)!;
      const surrounding = scan({ unit, pose });
      const moved = tubeToMesh(tube, treeOf(surrounding, soup))!;
      const baked = tubeToMesh(tube, triangleTree(placeMesh(surrounding, soup)))!;
      expect(Math.abs(moved.gap - baked.gap)).toBeLessThan(2e-3);
    }
  });
});

test('a tree is built once for a soup, wherever it stands, and one built elsewhere is adopted', () => {
  const soup = scattered(random(5), 'mm', 50);
  expect(hasTree(soup)).toBe(false);
  const here = treeOf(scan(), soup);
  const there = treeOf(scan({ pose: { position: [1, 2, 3] } }), soup);
  expect(there.flat).toBe(here.flat);
  expect(treeOf(scan(), soup)).toBe(here);
  expect(treeOf(scan({ clearance: 5 }), soup)).toBe(here);
  const copy = structuredClone(flatTreeOf(soup));
  const adopted = adoptTree(copy);
  expect(hasTree(adopted)).toBe(true);
  expect(treeOf(scan(), adopted).flat).toBe(copy);
  expect([...adopted].sort()).toEqual([...soup].sort());
});

test('progress rises to 1', () => {
  const parts: number[] = [];
  flatTreeOf(scattered(random(6), 'mm', 100_000), (part) => parts.push(part));
  expect(parts.length).toBeGreaterThan(2);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
  expect(parts.at(-1)).toBe(1);
});

test('GLB is in metres where nothing is said, other files in millimetres', () => {
  expect(unitOf({ file: 'bay.GLB' })).toBe('m');
  expect(unitOf({ file: 'bay.glb', unit: 'cm' })).toBe('cm');
  expect(unitOf({ file: 'bay.stl' })).toBe('mm');
});
