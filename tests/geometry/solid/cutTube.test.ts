/** Tubes cut by planes: sound solids, volumes against closed forms and against each other, cut faces truly plane. */
import { describe, expect, test } from 'vitest';
import { measureMesh, meshProblems, roundedToFloat32 } from '../../../geometry';
import { type CutPlane, type CutTubeShape, cutTube, cutTubeVolume } from '../../../geometry/solid/cutTube';
import { unit } from '../../../geometry/vector';
import { random } from '../../random';

const TUBE = { outsideDiameter: 42.4, wall: 1.5, start: 0 };
const METAL = Math.PI * 1.5 * (42.4 - 1.5);
const across = (offset: number): CutPlane => ({ normal: [0, 0, 1], offset });

describe('volume', () => {
  // A prism cut by an oblique plane holds its section times the height of the plane over the section's centroid.
  test.each([0, 20, 45, 70])('of a tube cut at %i° is its section times the length of its axis', (degrees) => {
    const a = (degrees * Math.PI) / 180;
    const plane: CutPlane = {
      normal: unit([Math.sin(a) * 0.6, Math.sin(a) * 0.8, Math.cos(a)]),
      offset: 100 * Math.cos(a),
    };
    const shape = { ...TUBE, planes: [plane] };
    expect(cutTubeVolume(shape) / (METAL * 100)).toBeCloseTo(1, 12);
    expect(Math.abs(measureMesh(cutTube(shape).mesh).volume / (METAL * 100) - 1)).toBeLessThan(1e-3);
  });

  test('of a tube halved along its axis is a half', () => {
    const half = { ...TUBE, planes: [across(50), { normal: [1, 0, 0], offset: 0 } as const] };
    expect(cutTubeVolume(half) / (METAL * 25)).toBeCloseTo(1, 9);
    expect(meshProblems(roundedToFloat32(cutTube(half).mesh))).toEqual([]);
  });

  // ∫∫ of x where it is positive, over a ring: 2(R³ − r³)/3. A floor at x = 0 leaves a hoof that ends in an edge.
  test('of a hoof that ends in an edge is its closed form', () => {
    const hoof = { ...TUBE, planes: [{ normal: unit([-1, 0, 1]), offset: 0 }] };
    const closed = (2 * (21.2 ** 3 - 19.7 ** 3)) / 3;
    expect(cutTubeVolume(hoof) / closed).toBeCloseTo(1, 9);
    expect(Math.abs(measureMesh(cutTube(hoof).mesh).volume / closed - 1)).toBeLessThan(1e-3);
    expect(meshProblems(roundedToFloat32(cutTube(hoof).mesh))).toEqual([]);
  });
});

/** A tube cut by one to five planes any way, some along it, and across its end. */
function anyShape(seed: number): CutTubeShape {
  const draw = random(seed);
  const planes = Array.from({ length: draw.whole(1, 5) }, (): CutPlane => {
    const lean = draw() < 0.1 ? 0 : draw.between(0.05, 1);
    return { normal: unit([draw.between(-1.5, 1.5), draw.between(-1.5, 1.5), lean]), offset: draw.between(8, 45) };
  });
  return {
    outsideDiameter: 42.4,
    wall: draw.between(0.5, 3),
    start: draw.between(0, 5),
    planes: [...planes, across(draw.between(6, 60))],
  };
}

const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

test.each(SEEDS)('cut any way it is sound, and its faces lie on their planes, seed %i', (seed) => {
  const shape = anyShape(seed);
  const volume = cutTubeVolume(shape);
  if (volume === 0) {
    expect(() => cutTube(shape)).toThrow(/cut away at its start/);
    return;
  }
  const { mesh } = cutTube(shape);
  expect(meshProblems(roundedToFloat32(mesh))).toEqual([]);
  // A sliver of a tube is mostly rounding: its corners are a thousandth of a millimetre true, not its volume a thousandth.
  expect(Math.abs(measureMesh(mesh).volume - volume)).toBeLessThan(1e-3 * volume + 0.05);
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => {
      const at = 3 * mesh.triangles[t + k]!;
      return [mesh.positions[at]!, mesh.positions[at + 1]!, mesh.positions[at + 2]!] as const;
    });
    const offPlane = [...shape.planes, { normal: [0, 0, -1], offset: -shape.start } as CutPlane].map(
      ({ normal, offset }) =>
        Math.max(...corners.map((p) => Math.abs(p[0] * normal[0] + p[1] * normal[1] + p[2] * normal[2] - offset))),
    );
    const onWall =
      corners.every(([x, y]) => Math.abs(Math.hypot(x, y) - 21.2) < 0.06) ||
      corners.every(([x, y]) => Math.abs(Math.hypot(x, y) - (21.2 - shape.wall)) < 0.06);
    expect(onWall || Math.min(...offPlane) < 2e-3).toBe(true);
  }
});

test('a tube that no plane crosses is refused', () => {
  expect(() => cutTube({ ...TUBE, planes: [{ normal: [1, 0, 0], offset: 0 }] })).toThrow(/needs a plane/);
});
