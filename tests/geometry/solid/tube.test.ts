import { describe, expect, test } from 'vitest';
import {
  centerline,
  dot,
  measureMesh,
  meshProblems,
  norm,
  roundedToFloat32,
  setback,
  triangleCount,
  tubeMeshVolume,
  tubeObstacle,
  tubeSolid,
  tubeVolume,
  tubeVolumeDeficit,
} from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { randomLine } from './lines';

/** One bend between two straights of length `lead`, in a skewed plane so that no axis is special. */
function oneBend(radius: number, degrees: number, lead = 0) {
  const turn = (degrees * Math.PI) / 180;
  const reach = setback(radius, turn) + lead;
  const [a, b]: [Vec3, Vec3] = [
    [2 / 3, 2 / 3, 1 / 3],
    [-2 / 3, 1 / 3, 2 / 3],
  ];
  const at = (k: Vec3, s: number, from: Vec3): Vec3 => [from[0] + s * k[0], from[1] + s * k[1], from[2] + s * k[2]];
  const out: Vec3 = at(b, Math.sin(turn), at(a, Math.cos(turn), [0, 0, 0]));
  const corner = at(a, reach, [300, -200, 100]);
  return centerline([[300, -200, 100], corner, at(out, reach, corner)], [radius]);
}

describe('a straight tube', () => {
  const line = centerline(
    [
      [0, 0, 0],
      [0, 0, 250],
    ],
    [],
  );
  // Published: the N-gon's area over its circle's, (N/2π)·sin(2π/N), at N = 64: key mesh.loss, recomputed.
  test('loses exactly what a polygon loses to its circle', () => {
    const sides128 = 2 * 20 * (1 - Math.cos(Math.PI / 128));
    const shape = { outsideDiameter: 40, wall: 2, chordError: sides128 * 1.0001 };
    const mesh = tubeSolid(line, shape);
    expect(triangleCount(mesh)).toBe(4 * 128 * 2);
    expect(measureMesh(mesh).volume / tubeVolume(line, shape)).toBeCloseTo(0.99959845, 8);
  });

  test('stays within a thousandth of the true volume, however coarse a chord is asked for', () => {
    const shape = { outsideDiameter: 40, wall: 2, chordError: 1 };
    expect(measureMesh(tubeSolid(line, shape)).volume / tubeVolume(line, shape)).toBeGreaterThan(0.999);
  });

  test('measures its true diameter and length', () => {
    const { min, max } = measureMesh(tubeSolid(line, { outsideDiameter: 42.4, wall: 1.5 })).bounds;
    expect(max[0] - min[0]).toBeCloseTo(42.4, 10);
    expect(max[1] - min[1]).toBeCloseTo(42.4, 10);
    expect([min[2], max[2]]).toEqual([0, 250]);
  });
});

describe('a bend', () => {
  // Wall area × arc: theorem of Pappus, a calculus textbook's section 7.6; key bend.vol, recomputed to 0.001.
  test.each([
    { od: 50.8, wall: 1.65, radius: 76.2, degrees: 90, metal: 30495.2493, skin: 19102.4219 + 17861.5166 },
    { od: 42.4, wall: 2, radius: 63.6, degrees: 45, metal: 12679.6782, skin: 6653.6925 + 6025.9857 },
  ])('of $degrees° holds the metal that Pappus says', ({ od, wall, radius, degrees, metal, skin }) => {
    const line = oneBend(radius, degrees);
    const shape = { outsideDiameter: od, wall, chordError: 4e-3 };
    expect(tubeVolume(line, shape)).toBeCloseTo(metal, 3);
    const { volume, area } = measureMesh(tubeSolid(line, shape));
    expect(Math.abs(volume / metal - 1)).toBeLessThan(3e-4);
    const ends = 2 * Math.PI * wall * (od - wall);
    expect(Math.abs((area - ends) / skin - 1)).toBeLessThan(3e-4);
  });

  test('of 180° in two parts likewise', () => {
    const [od, wall, radius] = [44.45, 1.65, 66.675];
    const line = centerline(
      [
        [0, 0, 0],
        [0, radius, 0],
        [2 * radius, radius, 0],
        [2 * radius, 0, 0],
      ],
      [radius, radius],
    );
    expect(tubeVolume(line, { outsideDiameter: od, wall })).toBeCloseTo(46471.9058, 3);
    expect(meshProblems(tubeSolid(line, { outsideDiameter: od, wall }))).toEqual([]);
  });

  // Torus of a unit circle at R = 2: volume 39.4784176 (the book prints 39.5); key pappus. A bore of next to nothing.
  test('all the way round approaches the torus', () => {
    const quarter = tubeVolume(oneBend(2, 90), { outsideDiameter: 2, wall: 1 - 1e-9 });
    expect(4 * quarter).toBeCloseTo(39.4784176, 6);
  });
});

describe('the volume in closed form', () => {
  test.each(Array.from({ length: 20 }, (_, i) => i + 1))('agrees with the mesh, seed %i', (seed) => {
    const next = random(seed);
    const { line, shape } = randomLine(next);
    const { volume } = measureMesh(tubeSolid(line, shape));
    expect(Math.abs(volume / tubeMeshVolume(line, shape) - 1)).toBeLessThan(1e-9);
    expect(tubeVolumeDeficit(line, shape)).toBeGreaterThan(0);
  });

  test('tends to Pappus as the square of the step: halving the error halves the deficit', () => {
    const line = oneBend(60, 90, 40);
    const at = (chordError: number) => tubeVolumeDeficit(line, { outsideDiameter: 42.4, wall: 1.5, chordError });
    expect(at(0.0005) / at(0.001)).toBeGreaterThan(0.45);
    expect(at(0.0005) / at(0.001)).toBeLessThan(0.55);
  });
});

describe('soundness', () => {
  test.each(Array.from({ length: 20 }, (_, i) => i + 101))(
    'closed, outward, no empty triangle in either precision, seed %i',
    (seed) => {
      const { line, shape } = randomLine(random(seed));
      const mesh = tubeSolid(line, shape);
      expect(meshProblems(mesh)).toEqual([]);
      expect(meshProblems(roundedToFloat32(mesh))).toEqual([]);
    },
  );

  test('also where the bend is as tight as the tube itself', () => {
    const mesh = tubeSolid(oneBend(21.2, 120, 30), { outsideDiameter: 42.4, wall: 1.5 });
    expect(meshProblems(roundedToFloat32(mesh))).toEqual([]);
  });

  test('also with no straight, or next to none, between and outside the bends', () => {
    const r = 60;
    for (const gap of [0, 1e-9, -1e-9, 0.0005, 0.002]) {
      const line = centerline(
        [
          [0, 0, 0],
          [0, r + gap, 0],
          [2 * r + gap, r + gap, 0],
          [2 * r + gap, r + gap, r + gap],
        ],
        [r, r],
      );
      expect(
        meshProblems(roundedToFloat32(tubeSolid(line, { outsideDiameter: 42.4, wall: 1.5 }))),
        `gap ${gap}`,
      ).toEqual([]);
    }
  });

  test('also far from the origin', () => {
    const line = centerline(
      [
        [9000, 9000, 0],
        [9000, 9100, 0],
        [9100, 9100, 0],
      ],
      [60],
    );
    expect(meshProblems(roundedToFloat32(tubeSolid(line, { outsideDiameter: 42.4, wall: 1.5 })))).toEqual([]);
  });
});

describe('the surface', () => {
  test('stays within the chord error of the true one', () => {
    const [radius, od, wall, chordError] = [63.6, 42.4, 1.5, 0.05];
    const line = centerline(
      [
        [0, 0, 0],
        [radius, 0, 0],
        [radius, radius, 0],
      ],
      [radius],
    );
    const { positions, triangles } = tubeSolid(line, { outsideDiameter: od, wall, chordError });
    let worst = 0;
    for (let t = 0; t < triangles.length; t += 3) {
      // Points of each triangle: middle of each side and of the whole. True surface: a torus about (0, R, ·).
      const corners = [0, 1, 2].map((k) => [0, 1, 2].map((axis) => positions[3 * triangles[t + k]! + axis]!));
      const mixes = [
        [0.5, 0.5, 0],
        [0, 0.5, 0.5],
        [0.5, 0, 0.5],
        [1 / 3, 1 / 3, 1 / 3],
      ];
      const ring = (p: number[]) => Math.hypot(Math.hypot(p[0]!, p[1]! - radius) - radius, p[2]!);
      const outside = corners.every((p) => ring(p) > od / 2 - wall / 2);
      const inside = corners.every((p) => ring(p) < od / 2 - wall / 2);
      if (!outside && !inside) continue; // an end
      for (const mix of mixes) {
        const p = [0, 1, 2].map((axis) => corners.reduce((sum, corner, k) => sum + mix[k]! * corner[axis]!, 0));
        worst = Math.max(worst, Math.abs(ring(p) - (outside ? od / 2 : od / 2 - wall)));
      }
    }
    expect(worst).toBeLessThanOrEqual(chordError);
    expect(worst).toBeGreaterThan(chordError / 4);
  });

  test('ends in two plane annuli square to the runner', () => {
    const line = oneBend(63.6, 70, 25);
    const { positions } = tubeSolid(line, { outsideDiameter: 42.4, wall: 1.5 });
    const ends = [
      [line.points[0]!, line.directions[0]!],
      [line.points.at(-1)!, line.directions.at(-1)!],
    ] as const;
    for (const [end, direction] of ends) {
      let [rim, bore] = [0, 0];
      for (let v = 0; v < positions.length; v += 3) {
        const off: Vec3 = [positions[v]! - end[0], positions[v + 1]! - end[1], positions[v + 2]! - end[2]];
        if (Math.abs(dot(off, direction)) > 1e-9) continue;
        if (Math.abs(norm(off) - 21.2) < 1e-9) rim++;
        if (Math.abs(norm(off) - 19.7) < 1e-9) bore++;
      }
      expect(rim).toBeGreaterThan(32);
      expect(bore).toBe(rim);
    }
  });
});

describe('what cannot be swept is refused, saying what and how much', () => {
  const bend = oneBend(20, 90, 30);
  test('a bend tighter than the tube', () => {
    expect(tubeObstacle(bend, { outsideDiameter: 42.4, wall: 1.5 })).toMatch(/bend 1 has a radius of 20 mm.*21\.2 mm/);
    expect(() => tubeSolid(bend, { outsideDiameter: 42.4, wall: 1.5 })).toThrow(RangeError);
  });
  test('bends that do not fit', () => {
    const line = centerline(
      [
        [0, 0, 0],
        [0, 50, 0],
        [50, 50, 0],
        [50, 100, 0],
      ],
      [40, 40],
    );
    expect(tubeObstacle(line, { outsideDiameter: 30, wall: 1.5 })).toMatch(/straight 2 comes out at -30\.00 mm/);
  });
  test('a wall that leaves no bore, and numbers that are not numbers', () => {
    expect(tubeObstacle(bend, { outsideDiameter: 30, wall: 15 })).toMatch(/wall is 15 mm/);
    expect(tubeObstacle(bend, { outsideDiameter: Number.NaN, wall: 1 })).toMatch(/outside diameter is NaN/);
    expect(tubeObstacle(bend, { outsideDiameter: 30, wall: 1, chordError: 0 })).toMatch(/chord error/);
  });
});
