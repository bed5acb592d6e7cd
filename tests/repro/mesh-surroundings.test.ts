/**
 * Scans as surroundings. A triangle without area made the distance NaN, which no rule calls too near; and a sheet that
 * reached into a tube through its flat end was measured as just touching it, which a clearance of 0 allows. Each design is
 * also turned and mirrored.
 */
import { describe, expect, test } from 'vitest';
import { check, rotate, unit } from '../../geometry';
import type { Design, Surrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { header } from '../geometry/check/header';

type Triangle = readonly [Vec3, Vec3, Vec3];
const scan: Surrounding = { id: 'scan', shape: 'mesh', file: 'scan.stl', clearance: 0 };

const ways: Record<string, (v: Vec3) => Vec3> = {
  'as it is': (v) => v,
  turned: (v) => rotate(v, unit([1, 2, -0.5]), 2.1),
  mirrored: ([x, y, z]) => [-x, y, z],
};

function problemsOf(triangles: readonly Triangle[], way: (v: Vec3) => Vec3) {
  const design = header({ surroundings: [scan] });
  const moved: Design = {
    ...design,
    ports: design.ports.map((p) => ({ ...p, position: way(p.position), direction: way(p.direction), up: way(p.up) })),
    merges: design.merges.map((m) => ({ ...m, position: way(m.position), axis: way(m.axis), up: way(m.up) })),
    runners: design.runners.map((r) => ({ ...r, points: r.points!.map(way) })),
  };
  const soup = Float32Array.from(triangles.flat().flatMap(way));
  return check(moved, new Map([['scan.stl', soup]])).problems.filter((p) => p.rule === 'surroundings');
}

describe.each(Object.entries(ways))('%s', (_, way) => {
  // r1 starts along +Y from the origin, 20 in radius.
  const clash: Triangle = [
    [-60, 40, 12],
    [60, 40, 12],
    [0, 90, 12],
  ];
  test('a triangle without area hides nothing', () => {
    const [a, b] = clash;
    const [problem] = problemsOf([[a, a, b], clash, [a, b, b]], way);
    expect(problem!.found).toBeLessThan(-8 + 0.05);
    expect(problemsOf([[a, a, a]], way)).toEqual([]);
  });
  test('an edge on its own, as a triangle without area, clashes like one', () => {
    const edge: Triangle = [
      [-60, 60, 12],
      [-60, 60, 12],
      [60, 60, 12],
    ];
    expect(problemsOf([edge], way)[0]!.found).toBeCloseTo(-8, 2);
  });
  test('a sheet that reaches in through the start of the tube is a clash', () => {
    const sheet: Triangle = [
      [-12, 4, -3],
      [-15, -40, 0],
      [-15, -40, -10],
    ];
    const [problem, ...rest] = problemsOf([sheet], way);
    expect(rest).toEqual([]);
    expect(problem!.found).toBeLessThan(-1);
  });
  test('a face that the tube starts on is none', () => {
    const face: Triangle = [
      [-200, 0, -200],
      [300, 0, -200],
      [50, 0, 400],
    ];
    expect(problemsOf([face], way)).toEqual([]);
  });
});
