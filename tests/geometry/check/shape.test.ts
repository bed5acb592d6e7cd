/** Rules on one runner alone: each broken by a little more than its tolerance, and by a little less. */
import { describe, expect, test } from 'vitest';
import { bends, centerline, check, rotate } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { bendInParts } from '../curve/lines';
import { header, movedPoints, pointsOf } from './header';

const problemsOf = (design: Design) => check(design).problems;
const onR1 = (design: Design, rule: string) =>
  problemsOf(design).filter((p) => p.rule === rule && p.where.includes('r1'));
const line = centerline(pointsOf(-1), [60, 60]);
const angles = bends(line).map((b) => (b.angle * 180) / Math.PI);

test('as it is, every rule holds', () => {
  expect(check(header())).toMatchObject({ ok: true, problems: [] });
});

test('routed: a runner without points', () => {
  const design = header();
  const { points: _, ...bare } = design.runners[0]!;
  const report = check({ ...design, runners: [bare, design.runners[1]!] });
  expect(report.problems).toEqual([
    {
      rule: 'routed',
      where: 'runners/r1',
      found: 'no points',
      allowed: 'points',
      message: expect.stringMatching(/r1 is not routed: .+/),
    },
  ]);
  expect(report.runners.map((r) => r.id)).toEqual(['r2']);
});

test('inlet: none chosen', () => {
  expect(problemsOf(header({ r1: { to: { merge: 'm1' } } }))).toEqual([
    {
      rule: 'inlet',
      where: 'runners/r1/to/inlet',
      found: null,
      allowed: 'an inlet',
      message: expect.stringMatching(/no inlet of m1 chosen: .+/),
    },
  ]);
});

describe('end', () => {
  test.each<[string, number, number, Vec3]>([
    ['start', 0, 1, [0, -1, 0]],
    ['end', 3, 1, [0, 0, 1]],
  ])('the %s 0.01 mm from its place', (name, point, _, way) => {
    const moved = (by: number) =>
      header({ r1: { points: movedPoints({ [point]: way.map((x) => x * by) as unknown as Vec3 }) } });
    expect(problemsOf(moved(0.0099))).toEqual([]);
    const [problem, ...rest] = problemsOf(moved(0.0101));
    expect(rest).toEqual([]);
    expect(problem).toMatchObject({ rule: 'end', where: `runners/r1/${name}`, allowed: 0.01 });
    expect(problem!.found).toBeCloseTo(0.0101, 9);
    expect(problem!.message).toMatch(/0\.01 mm from its place: balance sets it there/);
    expect(problem!.at).toBeDefined();
  });
  test.each([
    ['start', (by: number) => header({ port: { direction: rotate([0, 1, 0], [0, 0, 1], by) } }), 'port'],
    [
      'end',
      (by: number) =>
        header({ merge: { convergence: 0, axis: rotate([0, 0, -1], [0, 1, 0], by), position: [50, 300, -200] } }),
      'collector',
    ],
  ] as const)('the %s 0.01° off its direction', (name, design, towards) => {
    const degree = Math.PI / 180;
    const direction = (by: number) => onR1(design(by * degree), 'end').filter((p) => p.message.includes('off its'));
    expect(direction(0.0099)).toEqual([]);
    const [problem] = direction(0.0101);
    expect(problem).toMatchObject({ where: `runners/r1/${name}`, allowed: 0.01 });
    expect(problem!.found).toBeCloseTo(0.0101, 6);
    expect(problem!.message).toContain(`${towards}'s direction: balance turns it true`);
  });
});

describe('straight', () => {
  test.each([
    ['firstStraight', 0, 'before the first bend'],
    ['betweenStraight', 1, 'between bends 1 and 2'],
    ['lastStraight', 2, 'after the last bend'],
  ] as const)('%s', (field, i, words) => {
    const found = line.straights[i]!;
    expect(onR1(header({ tooling: { [field]: found + 0.0099 } }), 'straight')).toEqual([]);
    const [problem, ...rest] = onR1(header({ tooling: { [field]: found + 0.0101 } }), 'straight');
    expect(rest).toEqual([]);
    expect(problem).toMatchObject({ where: `runners/r1/straights/${i}`, allowed: found + 0.0101 });
    expect(problem!.found).toBeCloseTo(found, 9);
    expect(problem!.message).toMatch(new RegExp(`${words}, 0\\.01 mm short of .+: lengthen it`));
  });
  test('a straight runner needs the greater of first and last, not their sum', () => {
    const straight = (length: number): Design => {
      const design = header({ merge: { position: [25, length, 0], axis: [0, 1, 0], up: [0, 0, 1] } });
      const [p1] = design.ports;
      const r = {
        ...design.runners[0]!,
        points: [
          [0, 0, 0],
          [0, length, 0],
        ] as Vec3[],
      };
      return { ...design, ports: [p1!], runners: [r] };
    };
    expect(onR1(straight(20), 'straight')).toEqual([]);
    expect(onR1(straight(19.98), 'straight')).toHaveLength(1);
  });
  test('bends that overlap are told so', () => {
    const [problem] = onR1(header({ tooling: { centerlineRadius: 300 } }), 'straight').filter(
      (p) => Number(p.found) < 0,
    );
    expect(problem!.message).toMatch(/the bends overlap by .+ mm .+ of straight is needed there: move the bends apart/);
  });
  test('none is needed inside a continuous bend', () => {
    const u = bendInParts(60, [100, 100], 60).map(([x, y, z]): Vec3 => [-y, x + 60, z]);
    expect(onR1(header({ r1: { points: u } }), 'straight')).toEqual([]);
    expect(onR1(header({ r1: { points: u, radii: [60, 60.01] } }), 'straight')).toHaveLength(1);
  });
});

describe('angle', () => {
  test('past what the tooling makes', () => {
    const widest = Math.max(...angles);
    const k = angles.indexOf(widest);
    expect(onR1(header({ tooling: { maxBendAngle: widest - 0.0099 } }), 'angle')).toEqual([]);
    const [problem, ...rest] = onR1(header({ tooling: { maxBendAngle: widest - 0.0101 } }), 'angle');
    expect(rest).toEqual([]);
    expect(problem).toMatchObject({ where: `runners/r1/bends/${k}` });
    expect(problem!.found).toBeCloseTo(widest, 9);
    expect(problem!.message).toMatch(/bend 2 turns .+°; the tooling makes at most .+°: .+/);
  });
  test('a continuous bend counts whole', () => {
    const u = bendInParts(60, [90, 85], 60).map(([x, y, z]): Vec3 => [-y, x + 60, z]);
    const [problem] = onR1(header({ r1: { points: u } }), 'angle');
    expect(problem!.found).toBeCloseTo(175, 8);
    expect(onR1(header({ r1: { points: u }, tooling: { maxBendAngle: 175 } }), 'angle')).toEqual([]);
  });
  test('a point that turns back on itself', () => {
    const back = (degrees: number): Vec3[] => {
      const t = (degrees * Math.PI) / 180;
      return [
        [0, 0, 0],
        [0, 9000, 0],
        [8000 * Math.sin(t), 9000 + 8000 * Math.cos(t), 0],
      ];
    };
    const found = (degrees: number) =>
      onR1(header({ r1: { points: back(degrees) }, tooling: { maxBendAngle: 360 } }), 'angle');
    expect(found(178.9)).toEqual([]);
    expect(found(179.1)).toMatchObject([
      {
        where: 'runners/r1/points/1',
        allowed: 179,
        message: expect.stringContaining('store so wide a bend as two points'),
      },
    ]);
  });
});

test('bends: one more than the tooling allows', () => {
  expect(problemsOf(header({ tooling: { maxBends: 2 } }))).toEqual([]);
  expect(onR1(header({ tooling: { maxBends: 1 } }), 'bends')).toMatchObject([
    {
      where: 'runners/r1',
      found: 2,
      allowed: 1,
      message: expect.stringMatching(/has 2 bends; at most 1 are allowed: .+/),
    },
  ]);
});

test('bends: those in parts and those too slight to be bends are not counted', () => {
  const u = bendInParts(60, [50, 50, 50], 60).map(([x, y, z]): Vec3 => [-y, x + 60, z]);
  expect(onR1(header({ r1: { points: u }, tooling: { maxBends: 1 } }), 'bends')).toEqual([]);
  const points = pointsOf(-1);
  points.splice(1, 0, [0.001, 60, 0]);
  expect(onR1(header({ r1: { points }, tooling: { maxBends: 2 } }), 'bends')).toEqual([]);
});

test('radius: never less than half the tube', () => {
  expect(onR1(header({ r1: { radii: [20, 60] } }), 'radius')).toEqual([]);
  expect(onR1(header({ r1: { radii: [19.999, 60] } }), 'radius')).toMatchObject([
    {
      where: 'runners/r1/radii/0',
      found: 19.999,
      allowed: 20,
      message: expect.stringMatching(/less than half the tube's diameter \(20 mm\): .+/),
    },
  ]);
});
