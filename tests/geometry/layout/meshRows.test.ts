/**
 * The rows that hold a moving collector's body and the tube ends at it off a mesh: their slopes against differences of their
 * own values. The mesh is of triangles no larger than a point, so that what is nearest stays the same place while everything
 * moves a little. mm.
 */
import { expect, it } from 'vitest';
import { resolveHeader } from '../../../geometry';
import { obstaclesOf } from '../../../geometry/check/obstacles';
import { layoutProblem, place } from '../../../geometry/layout/layoutProblem';
import { RowBuilder } from '../../../geometry/layout/rowBuilder';
import { gatherRows } from '../../../geometry/layout/solve';
import { addScaled, anySquareTo, cross, unit } from '../../../geometry/vector';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { loadLayout } from '../../layouts/load';
import { type Random, random } from '../../random';

const STEP = 1e-4;
/** Curving is far less over two steps, mm: of a tilt that moves things 200 mm off it is some 1e-6. */
const JUMP = 1e-5;
const { design } = loadLayout('known', 'c2-i4-4-2-1');

const point = (p: Vec3): number[] => [...p, ...p, ...p];

type Round = {
  readonly position: Vec3;
  readonly axis: Vec3;
  readonly length: number;
  readonly radius: (h: number) => number;
};

/** Points beside a round thing's side and off its faces, some outside and some within. */
function pointsAbout({ position, axis, length, radius }: Round, next: Random, off: readonly number[]): number[] {
  const u = anySquareTo(axis);
  const v = cross(axis, u);
  return off.flatMap((gap) => {
    const angle = next.between(0, 2 * Math.PI);
    const out = unit(addScaled(addScaled([0, 0, 0], u, Math.cos(angle)), v, Math.sin(angle)));
    const h = next.between(0.2, 0.8);
    const side = addScaled(addScaled(position, axis, h * length), out, radius(h) + gap);
    const face = addScaled(addScaled(position, axis, length + Math.abs(gap)), out, radius(1) * next.between(0.2, 0.8));
    const rim = addScaled(addScaled(position, axis, length + 2), out, radius(1) + 3);
    return [...point(side), ...point(face), ...point(rim)];
  });
}

it.each([1, 2, 3])('slopes are what differences say, seed %i', (seed) => {
  const next = random(seed);
  const bare = layoutProblem(resolveHeader(design));
  const x = bare.start.map((value, k) => value + next.between(-1, 1) * (k % 5 > 2 && k < 10 ? 0.02 : 3));
  place(bare, x);
  expect(bare.merges.length).toBeGreaterThan(1);
  const soup: number[] = [];
  for (const { geometry } of bare.merges) {
    const { position, axis, length, startRadius, endRadius } = geometry.body;
    const radius = (h: number): number => startRadius + h * (endRadius - startRadius);
    soup.push(...pointsAbout({ position, axis, length, radius }, next, [2, 5, 9, -1.5]));
  }
  for (const { resolved, from, to } of bare.runners)
    for (const [joint, sign] of [
      [from, -1],
      [to, 1],
    ] as const) {
      if (!joint.merge) continue;
      const { position, direction } = joint.pose;
      const axis: Vec3 = [sign * direction[0], sign * direction[1], sign * direction[2]];
      const behind = addScaled(position, axis, -12);
      soup.push(
        ...pointsAbout({ position: behind, axis, length: 12, radius: () => resolved.tubeRadius }, next, [4, 8]),
      );
    }
  const scanned: Design = { ...design, surroundings: [{ id: 'scan', shape: 'mesh', file: 'scan.stl', clearance: 3 }] };
  const header = resolveHeader(scanned);
  const problem = layoutProblem(header);
  const { obstacles } = obstaclesOf(header, new Map([['scan.stl', Float32Array.from(soup)]]));
  const rows = new RowBuilder(problem.unknowns, problem.dearness);
  const valuesAt = (at: Float64Array): Map<string, number> => {
    gatherRows(problem, obstacles, at, rows);
    return new Map(rows.keys.map((key, i) => [key, rows.value(i)]));
  };
  gatherRows(problem, obstacles, x, rows);
  const keys = rows.keys.flatMap((key, i) => {
    const isEnd = /^surroundings\|.*\|(start|end) \d+$/.test(key);
    return isEnd || (key.startsWith('merge-body|') && key.includes('surroundings/scan')) ? [{ key, i, isEnd }] : [];
  });
  const slopes = new Map(
    keys.map(({ key, i }) => [key, rows.array.slice(i * problem.unknowns, (i + 1) * problem.unknowns)]),
  );
  expect(new Set(keys.map(({ key }) => key)).size).toBe(keys.length);
  expect(keys.filter(({ isEnd }) => isEnd).length).toBeGreaterThan(10);
  expect(keys.filter(({ isEnd }) => !isEnd).length).toBeGreaterThan(10);
  const values = valuesAt(x);
  let compared = 0;
  for (let k = 0; k < problem.unknowns; k++) {
    const aside = (by: number) => valuesAt(x.map((old, j) => (j === k ? old + by : old)));
    const [ahead, behind] = [aside(STEP), aside(-STEP)];
    for (const { key } of keys) {
      const [more, less] = [ahead.get(key), behind.get(key)];
      const now = values.get(key)!;
      // A place on the border of two patches goes over to the other, and another is then the nearest: a jump.
      if (more === undefined || less === undefined || Math.abs(more - 2 * now + less) > JUMP) continue;
      expect(slopes.get(key)![k], key).toBeCloseTo((more - less) / (2 * STEP), 3);
      compared++;
    }
  }
  expect(compared).toBeGreaterThan(0.98 * keys.length * problem.unknowns);
});
