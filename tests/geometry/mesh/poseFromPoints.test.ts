/** Three points on a scan and their places: the pose given back, the best where they disagree, and what cannot be told. */
import { describe, expect, test } from 'vitest';
import { type PosedByPoints, placeMesh, poseFromPoints, type ThreePoints } from '../../../geometry';
import { cross, distance, reject, unit } from '../../../geometry/vector';
import type { LengthUnit } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { type Random, random } from '../../random';

const MM = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;
const somewhere = (next: Random, size: number): Vec3 => [
  next.between(-size, size),
  next.between(-size, size),
  next.between(-size, size),
];
const posed = (answer: ReturnType<typeof poseFromPoints>): PosedByPoints => {
  if ('refusal' in answer) throw new Error(answer.refusal);
  return answer;
};
/** As a mesh of one triangle in that pose stands: by the code that draws it. */
function placed(pose: PosedByPoints['pose'], unit: LengthUnit, points: ThreePoints): Vec3[] {
  const soup = placeMesh({ id: 's', shape: 'mesh', file: 's.stl', unit, pose }, Float32Array.from(points.flat()));
  return [0, 3, 6].map((i): Vec3 => [soup[i]!, soup[i + 1]!, soup[i + 2]!]);
}
function moved(next: Random): (p: Vec3) => Vec3 {
  const x = unit(somewhere(next, 1));
  const y = unit(reject(somewhere(next, 1), x));
  const z = cross(x, y);
  const at = somewhere(next, 400);
  return (p) => [0, 1, 2].map((k) => at[k]! + p[0] * x[k]! + p[1] * y[k]! + p[2] * z[k]!) as unknown as Vec3;
}

describe.each(['mm', 'cm', 'm', 'in'] as LengthUnit[])('a scan in %s', (unit) => {
  test.each([1, 2, 3, 4, 5])('exact points give their pose back, seed %i', (seed) => {
    const next = random(seed);
    const points: ThreePoints = [somewhere(next, 300), somewhere(next, 300), somewhere(next, 300)];
    const way = moved(next);
    const places = points.map(way) as unknown as ThreePoints;
    const own = points.map((p) => p.map((x) => x / MM[unit])) as unknown as ThreePoints;
    const { pose, residuals, warning } = posed(poseFromPoints(own, places, unit));
    expect(Math.max(...residuals)).toBeLessThan(1e-9);
    expect(warning).toBeNull();
    for (const [i, p] of placed(pose, unit, own).entries()) expect(distance(p, places[i]!)).toBeLessThan(1e-3);
  });
});

test.each([1, 2, 3, 4, 5, 6])('noisy points: no pose near by is better, seed %i', (seed) => {
  const next = random(seed);
  const points: ThreePoints = [somewhere(next, 300), somewhere(next, 300), somewhere(next, 300)];
  const way = moved(next);
  const places = points.map((p) => {
    const [x, y, z] = way(p);
    const [a, b, c] = somewhere(next, 2);
    return [x + a, y + b, z + c];
  }) as unknown as ThreePoints;
  const { pose, residuals } = posed(poseFromPoints(points, places, 'mm'));
  const sum = (p: typeof pose): number => {
    const x = unit(p.x);
    const y = unit(reject(p.y, x));
    const z = cross(x, y);
    return points.reduce((total, q, i) => {
      const at = [0, 1, 2].map((k) => p.position[k]! + q[0] * x[k]! + q[1] * y[k]! + q[2] * z[k]!) as unknown as Vec3;
      return total + distance(at, places[i]!) ** 2;
    }, 0);
  };
  const best = sum(pose);
  expect(best).toBeCloseTo(
    residuals.reduce((t, r) => t + r * r, 0),
    9,
  );
  expect(best).toBeGreaterThan(0);
  const near = (v: Vec3, by: number): Vec3 => v.map((c) => c + next.between(-by, by)) as unknown as Vec3;
  for (let i = 0; i < 400; i++) {
    const by = 10 ** next.between(-6, 0);
    const other = { position: near(pose.position, 100 * by), x: near(pose.x, by), y: near(pose.y, by) };
    expect(sum(other)).toBeGreaterThanOrEqual(best - 1e-9);
  }
});

describe('what three points cannot tell', () => {
  const good: ThreePoints = [
    [0, 0, 0],
    [100, 0, 0],
    [0, 100, 0],
  ];
  const line: ThreePoints = [
    [0, 0, 0],
    [100, 0, 0],
    [200, 0.5, 0],
  ];
  const same: ThreePoints = [
    [1, 1, 1],
    [1, 1, 1],
    [0, 100, 0],
  ];
  test.each([
    [line, good, /The points on the scan lie on one line/],
    [good, line, /The places in the design lie on one line/],
    [same, good, /points on the scan lie on each other: pick three/],
    [good, [same[0], same[0], same[0]], /places in the design lie on each other/],
  ] as [ThreePoints, ThreePoints, RegExp][])('%#', (points, places, why) => {
    const answer = poseFromPoints(points, places, 'mm');
    expect('refusal' in answer && answer.refusal).toMatch(why);
  });

  const scaled = (k: number) => good.map((p) => p.map((x) => x * k)) as unknown as ThreePoints;
  test.each([
    [1 / 25.4, 'mm', /25\.4 times too near each other: is the scan in inches\?/],
    [1, 'in', /25\.4 times too far apart: is the scan in millimetres\?/],
    [1 / 1000, 'mm', /1000 times too near.*in metres/],
    [0.7, 'mm', /1\.43 times too near.*in another unit, or scaled/],
  ] as [number, LengthUnit, RegExp][])('a scan %d times as large, said to be in %s', (k, unit, why) => {
    expect(posed(poseFromPoints(scaled(k), good, unit)).warning).toMatch(why);
  });

  test('a point picked at another place is named by its side', () => {
    const { warning, residuals } = posed(poseFromPoints([good[0], good[1], [0, 140, 0]], good, 'mm'));
    expect(warning).toMatch(/points (2 and 3|3 and 1) are .* is one of them another place/);
    expect(Math.max(...residuals)).toBeGreaterThan(10);
  });
});
