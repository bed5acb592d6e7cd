import { describe, expect, test } from 'vitest';
import {
  centerline,
  frustumSolid,
  joinMeshes,
  type Mesh,
  meshCrossings,
  meshProblems,
  partProblems,
  rotate,
  roundedToFloat32,
  tubeSolid,
  unit,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';
import { randomLine } from '../solid/lines';
import { crossingsByHand } from './exactCrossing';

const moved = ({ positions, triangles }: Mesh, move: (p: Vec3) => Vec3): Mesh => {
  const to = new Float64Array(positions.length);
  for (let i = 0; i < to.length; i += 3) to.set(move([positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  return { positions: to, triangles };
};

/** Eight corners, each 0 or 1 along an axis, by the bits of its number. */
const BOX = [
  0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5,
];
const box = (low: Vec3, high: Vec3): Mesh => ({
  positions: Float64Array.from({ length: 24 }, (_, i) => {
    const [corner, axis] = [Math.floor(i / 3), i % 3];
    return (corner >> axis) & 1 ? high[axis]! : low[axis]!;
  }),
  triangles: Uint32Array.from(BOX),
});

const tube = { outsideDiameter: 42.4, wall: 1.5 };
/** Comes back through its own first straight, square to it. */
const FOLDED = centerline(
  [
    [0, 0, 0],
    [0, 0, 200],
    [0, 120, 200],
    [0, 120, 60],
    [0, -100, 60],
  ],
  [50, 50, 50],
);

describe('a sound mesh does not cross itself', () => {
  test.each(Array.from({ length: 12 }, (_, i) => i + 1))('a tube that stays clear of itself, seed %i', (seed) => {
    const next = random(seed);
    const { line, shape } = randomLine(next);
    // Of random tubes some run through themselves: only the first bend is kept.
    const one = line.radii.length === 0 ? line : centerline(line.points.slice(0, 3), line.radii.slice(0, 1));
    const mesh = tubeSolid(one, shape);
    expect(meshCrossings(mesh)).toEqual([]);
    expect(partProblems(mesh)).toEqual([]);
  });

  test('nor where a bend is as tight as the tube, nor far from the origin, nor with a paper-thin wall', () => {
    const at = (k: number) =>
      centerline(
        [
          [k, k, 0],
          [k, k + 100, 0],
          [k + 100, k + 100, 0],
        ],
        [21.2],
      );
    expect(partProblems(tubeSolid(at(0), tube))).toEqual([]);
    expect(partProblems(tubeSolid(at(9000), tube))).toEqual([]);
    expect(partProblems(tubeSolid(at(0), { ...tube, wall: 0.05, chordError: 0.01 }))).toEqual([]);
  });

  test('nor do shells that touch at a corner, along an edge or corner on face', () => {
    const corner = joinMeshes([box([0, 0, 0], [10, 10, 10]), box([10, 10, 10], [20, 20, 20])]);
    const edge = joinMeshes([box([0, 0, 0], [10, 10, 10]), box([10, 10, 0], [20, 20, 10])]);
    const spike: Mesh = {
      positions: Float64Array.from([5, 5, 10, 3, 3, 20, 8, 3, 20, 5, 8, 20]),
      triangles: Uint32Array.from([0, 2, 1, 0, 3, 2, 0, 1, 3, 1, 2, 3]),
    };
    const onFace = joinMeshes([box([0, 0, 0], [10, 10, 10]), spike]);
    for (const mesh of [corner, edge, onFace]) {
      expect(meshProblems(mesh)).toEqual([]);
      expect(meshCrossings(mesh)).toEqual([]);
    }
    expect(meshCrossings({ positions: new Float64Array(0), triangles: new Uint32Array(0) })).toEqual([]);
  });
});

describe('a mesh that passes through itself is found out', () => {
  test('a tube folded through itself, where its skins meet', () => {
    const mesh = tubeSolid(FOLDED, tube);
    expect(meshProblems(mesh)).toEqual([]);
    const found = meshCrossings(mesh, Number.POSITIVE_INFINITY);
    expect(found.length).toBeGreaterThan(100);
    // Every place lies on a skin of both straights, within the chord error: axes along z and along y at z = 60.
    const isSkin = (r: number) => Math.min(Math.abs(r - 21.2), Math.abs(r - 19.7)) <= 0.05;
    for (const { at } of found) {
      expect(isSkin(Math.hypot(at[0], at[1])), `${at}`).toBe(true);
      expect(isSkin(Math.hypot(at[0], at[2] - 60)), `${at}`).toBe(true);
    }
    expect(partProblems(mesh).join()).toMatch(
      /triangles \d+ and \d+ pass through each other at \(-?[\d.]+, -?[\d.]+, -?[\d.]+\), and at many other places/,
    );
  });

  test('and no more than asked for are told', () => {
    expect(meshCrossings(tubeSolid(FOLDED, tube), 3).length).toBe(3);
  });

  test('two shells that overlap, by however little over the tolerance', () => {
    const overlapping = (by: number) => joinMeshes([box([0, 0, 0], [10, 10, 10]), box([10 - by, 3, 4], [18, 6, 7])]);
    for (const by of [2, 0.01, 1e-5]) expect(meshCrossings(overlapping(by)).length, `${by}`).toBeGreaterThan(0);
    expect(meshCrossings(overlapping(-1e-5))).toEqual([]);
    const { at } = meshCrossings(overlapping(2), 1)[0]!;
    expect(at[0]).toBeGreaterThanOrEqual(8);
    expect(at[0]).toBeLessThanOrEqual(10);
  });

  test('two shells with faces on one another, which enclose no doubled space', () => {
    const mesh = joinMeshes([box([0, 0, 0], [10, 10, 10]), box([10, 2, 2], [20, 8, 8])]);
    const found = meshCrossings(mesh, 100);
    expect(found.length).toBeGreaterThan(0);
    for (const { at } of found) expect(at[0]).toBe(10);
    expect(partProblems(mesh).length).toBeGreaterThan(0);
  });

  test('an edge that goes through a face along a line of it', () => {
    // A wedge whose faces both end on the box's top plane, so that no triangle goes through the top alone.
    const mesh = joinMeshes([
      box([0, 0, 0], [10, 10, 10]),
      moved(box([0, 0, 0], [6, 6, 6]), ([x, y, z]) => [x - y + 5, 2 + z, x + y + 4]),
    ]);
    expect(meshCrossings(mesh, 100).length).toBeGreaterThan(0);
  });

  test('one frustum through another, turned and scaled anyhow, is found in the same triangles', () => {
    const body = { position: [0, 0, 0], length: 100, startRadius: 30, endRadius: 20 } as const;
    const mesh = joinMeshes([
      frustumSolid({ ...body, axis: [0, 0, 1] }),
      frustumSolid({ ...body, axis: unit([1, 0.2, 0.4]), position: [-40, -3, 30] }),
    ]);
    const pairs = (m: Mesh) => meshCrossings(m, Number.POSITIVE_INFINITY).map(({ triangles }) => triangles);
    const plain = pairs(mesh);
    expect(plain.length).toBeGreaterThan(50);
    const next = random(7);
    for (let round = 0; round < 5; round++) {
      const axis = unit([next.between(-1, 1), next.between(-1, 1), 1]);
      const [turn, size, far] = [next.between(0, 6), 10 ** next.between(-1, 2), next.between(-500, 500)];
      const away = moved(mesh, (p) => rotate(p, axis, turn).map((x) => size * (x + far)) as unknown as Vec3);
      expect(pairs(away)).toEqual(plain);
    }
  });
});

/** Tetrahedra on a coarse grid, so that touching, flush faces and shared corners are as frequent as plain crossings. */
function jumble(next: Random, grid: number): Mesh {
  const shells = Array.from({ length: next.whole(2, 6) }, (): Mesh => {
    const positions = Float64Array.from({ length: 12 }, () => next.whole(0, grid));
    return { positions, triangles: Uint32Array.from([0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0]) };
  });
  return joinMeshes(shells);
}

describe('every two triangles held against each other in exact fractions', () => {
  test.each([2, 3, 5, 9, 40])('find the same, seeds 1 to 150, corners on a grid of %i', (grid) => {
    let crossing = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const mesh = jumble(random(1000 * grid + seed), grid);
      const found = meshCrossings(mesh, Number.POSITIVE_INFINITY).map(({ triangles }) => triangles);
      const exact = crossingsByHand(mesh);
      expect(found, `seed ${seed}`).toEqual(exact);
      crossing += exact.length;
    }
    expect(crossing).toBeGreaterThan(150);
  });

  // Rounding moves slender triangles of one plane out of it, so that a pair of them may be let go; a mesh never is.
  test('and turned away from the axes and rounded to single precision, seeds 1 to 100', () => {
    let [all, seen] = [0, 0];
    for (let seed = 1; seed <= 100; seed++) {
      const next = random(seed);
      const mesh = jumble(next, 5);
      const axis = unit([next.between(-1, 1), next.between(-1, 1), 1]);
      const turn = next.between(0, 6);
      const away = roundedToFloat32(moved(mesh, (p) => rotate([50 * p[0], 50 * p[1], 50 * p[2]], axis, turn)));
      const found = meshCrossings(away, Number.POSITIVE_INFINITY).map(({ triangles }) => triangles.join());
      const exact = crossingsByHand(mesh).map((pair) => pair.join());
      expect(
        found.filter((pair) => !exact.includes(pair)),
        `seed ${seed}`,
      ).toEqual([]);
      expect(found.length > 0, `seed ${seed}`).toBe(exact.length > 0);
      all += exact.length;
      seen += found.length;
    }
    expect(seen / all).toBeGreaterThan(0.99);
  });
});

describe('a part is also', () => {
  test('one piece', () => {
    const apart = joinMeshes([box([0, 0, 0], [10, 10, 10]), box([20, 0, 0], [30, 10, 10])]);
    expect(meshProblems(apart)).toEqual([]);
    expect(partProblems(apart)).toEqual(['it is 2 pieces, not one']);
  });

  test('free of needles, which a reader in single precision would turn', () => {
    const roof = (height: number): Mesh => ({
      positions: Float64Array.from([0, 0, 0, 40, 0, 0, 20, 0, 20, 20, height, 0]),
      triangles: Uint32Array.from([0, 1, 2, 0, 3, 1, 1, 3, 2, 2, 3, 0]),
    });
    expect(partProblems(roof(0.01))).toEqual([]);
    expect(partProblems(roof(0.002)).join()).toMatch(/^1 triangles are so thin/);
    expect(meshProblems(roundedToFloat32(roof(0.002)))).toEqual([]);
  });
});

test('a hundred thousand triangles take no time to speak of', () => {
  const mesh = tubeSolid(FOLDED, { ...tube, chordError: 0.01 });
  const clear = { ...mesh, triangles: mesh.triangles.slice(0, 300_000) };
  expect(clear.triangles.length).toBe(300_000);
  const start = performance.now();
  meshCrossings(clear, Number.POSITIVE_INFINITY);
  // Measured: 0.3 s on two shared cores; a search of every pair would take minutes.
  expect(performance.now() - start).toBeLessThan(5000);
});
