import { describe, expect, test } from 'vitest';
import { centerline, cross, dot, frames, norm, sampleCenterline } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { bendInParts, randomSketch, seeds } from './lines';

describe.each(seeds(12))('frames along a random runner, seed %i', (seed) => {
  const { points, radii, up } = randomSketch(random(seed));
  const along = frames(sampleCenterline(centerline(points, radii), 0.01), up);

  test('are square, of unit length and right-handed', () => {
    for (const { tangent, normal, side } of along) {
      expect(norm(normal)).toBeCloseTo(1, 12);
      expect(dot(tangent, normal)).toBeCloseTo(0, 12);
      for (const [k, x] of cross(tangent, normal).entries()) expect(side[k]).toBeCloseTo(x, 12);
    }
  });
  test('do not twist: the normal never turns about the tangent', () => {
    for (const [i, b] of along.slice(1).entries()) {
      const a = along[i]!;
      const halfway = [0, 1, 2].map((k) => a.tangent[k]! + b.tangent[k]!) as unknown as Vec3;
      const twist = dot(cross(a.normal, b.normal), halfway) / 2;
      expect(Math.abs(twist)).toBeLessThan(1e-4);
    }
  });
});

test('on a planar curve a normal square to the plane stays as it is, and one in it stays in it', () => {
  const line = centerline(bendInParts(60, [70, 80, 90], 50), [60, 60, 60]);
  const stations = sampleCenterline(line, 0.05);
  for (const { normal } of frames(stations, [0, 0, 1]))
    expect(normal).toEqual([0, 0, 1].map((x) => expect.closeTo(x, 12)));
  for (const { normal } of frames(stations, [0, 1, 0])) expect(normal[2]).toBeCloseTo(0, 12);
});

test('an up along the start, or none, still gives frames', () => {
  const stations = sampleCenterline(
    centerline(
      [
        [0, 0, 0],
        [100, 0, 0],
      ],
      [],
    ),
    0.05,
  );
  for (const up of [[5, 0, 0] as Vec3, undefined])
    for (const { normal, tangent } of frames(stations, up)) {
      expect(norm(normal)).toBeCloseTo(1, 12);
      expect(dot(normal, tangent)).toBeCloseTo(0, 12);
    }
  expect(frames([])).toEqual([]);
});
