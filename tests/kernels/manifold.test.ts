import { beforeAll, expect, test } from 'vitest';
import {
  centerline,
  joinMeshes,
  type Mesh,
  measureMesh,
  partProblems,
  tubeMeshVolume,
  tubeSolid,
} from '../../geometry';
import { loadManifold, manifoldOfMesh, manifoldTrim, manifoldUnion, meshOfManifold } from './manifold';
import { free, loadOcct, occtCutTube, occtVolume } from './occt';

beforeAll(async () => {
  await loadManifold();
  await loadOcct();
}, 60_000);

const line = centerline(
  [
    [20, -10, 0],
    [20, -10, 100],
  ],
  [],
);
const shape = { outsideDiameter: 42.4, wall: 1.5 };
const tube = tubeSolid(line, shape);

test('a mesh goes in and comes out as it was', () => {
  const solid = manifoldOfMesh(tube);
  expect(solid.volume() / tubeMeshVolume(line, shape)).toBeCloseTo(1, 5);
  const back = meshOfManifold(solid);
  expect(partProblems(back)).toEqual([]);
  expect(measureMesh(back).volume / tubeMeshVolume(line, shape)).toBeCloseTo(1, 5);
  solid.delete();
});

test('a mesh with a hole is refused', () => {
  expect(() => manifoldOfMesh({ ...tube, triangles: tube.triangles.slice(3) })).toThrow(/NotManifold|manifold/i);
});

// A prism cut aslant holds its area × its height at the centroid, whatever the slant (textbook solid geometry, from memory).
test('a tube cut aslant holds its area × its height at the axis, and so it does by the other kernel', () => {
  const plane = { point: [20, -10, 60], normal: [0.4, -0.3, 1] } as const;
  const solid = manifoldOfMesh(tube);
  const cut = manifoldTrim(solid, plane);
  expect(cut.volume() / (0.6 * tubeMeshVolume(line, shape))).toBeCloseTo(1, 5);
  const other = occtCutTube({ position: [20, -10, 0], direction: [0, 0, 1], length: 100 }, 21.2, 19.7, [plane]);
  expect(cut.volume() / solid.volume()).toBeCloseTo(occtVolume(other) / (Math.PI * (21.2 ** 2 - 19.7 ** 2) * 100), 5);
  free(other);
  cut.delete();
  solid.delete();
});

const BOX = [
  0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5,
];
const cube = (from: number, size: number): Mesh => ({
  positions: Float64Array.from({ length: 24 }, (_, i) => from + size * ((Math.floor(i / 3) >> (i % 3)) & 1)),
  triangles: Uint32Array.from(BOX),
});

test('cubes that overlap become one shell of their joint volume, which they are not while merely joined', () => {
  const both = [cube(0, 10), cube(6, 8)];
  const solids = both.map(manifoldOfMesh);
  const one = manifoldUnion(solids);
  expect(one.volume()).toBeCloseTo(10 ** 3 + 8 ** 3 - 4 ** 3, 6);
  expect(partProblems(meshOfManifold(one))).toEqual([]);
  expect(partProblems(joinMeshes(both)).length).toBeGreaterThan(0);
  for (const solid of [one, ...solids]) solid.delete();
});
