import { expect, test } from 'vitest';
import { frustumSolid, measureMesh, meshProblems, roundedToFloat32, unit } from '../../../geometry';

const body = {
  position: [150, 250, -350],
  axis: unit([0.1, 0.3, -1]),
  length: 120,
  startRadius: 52,
  endRadius: 30,
} as const;

test('a merge body is closed, faces outward and holds a frustum of its polygon', () => {
  const mesh = frustumSolid(body);
  expect(meshProblems(roundedToFloat32(mesh))).toEqual([]);
  const sides = (mesh.positions.length / 3 - 2) / 2;
  // Prismatoid: h/3 · (A₁ + √(A₁A₂) + A₂), exact for similar ends (textbook solid geometry, from memory).
  const polygon = (r: number) => (sides / 2) * Math.sin((2 * Math.PI) / sides) * r * r;
  const [a, b] = [polygon(52), polygon(30)];
  expect(measureMesh(mesh).volume / ((120 / 3) * (a + Math.sqrt(a * b) + b))).toBeCloseTo(1, 10);
});

test('it flares as well as it tapers', () => {
  expect(meshProblems(frustumSolid({ ...body, startRadius: 20, endRadius: 40 }))).toEqual([]);
});
