/** Bends past what one point can do: exact as drawn, exact again after a step, and found where nothing else leads there. */
import { describe, expect, it } from 'vitest';
import { bends } from '../../../geometry/curve/bends';
import { centerline } from '../../../geometry/curve/centerline';
import type { Pose } from '../../../geometry/header/merge';
import { randomNumbers } from '../../../geometry/layout/random';
import { arcPoints, partsOf, rejoined, turnToward } from '../../../geometry/route/continuousBend';
import { FEASIBLE, type Settled } from '../../../geometry/route/drawing';
import { lay } from '../../../geometry/route/lay';
import { measuredLayout } from '../../../geometry/route/layout';
import { planOf } from '../../../geometry/route/plan';
import { allOf } from '../../../geometry/route/steps';
import { mixed, stockOf } from '../../../geometry/route/stock';
import { taskOf } from '../../../geometry/route/task';
import { RADIANS } from '../../../geometry/tolerance';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { opposed, RADIUS } from './opposed';

const pose = (position: Vec3, direction: Vec3): Pose => ({ position, direction, up: [1, 0, 0] });
const START = pose([0, 0, 0], [0, 1, 0]);
const FROM: Vec3 = [0, 30, 0];

describe('turned toward a place', () => {
  const to: Vec3 = [170, -200, 40];
  for (const away of [false, true])
    it(`is one bend, and the leg after it leads there${away ? ' the long way round' : ''}`, () => {
      const turn = turnToward(FROM, START.direction, to, RADIUS, away)!;
      const parts = partsOf(turn.angle);
      const arc = arcPoints(FROM, START.direction, turn.side, RADIUS, turn.angle, parts);
      const line = centerline(
        [START.position, ...arc, to],
        arc.map(() => RADIUS),
      );
      const found = bends(line);
      expect(found.length).toBe(1);
      expect(found[0]!.angle).toBeCloseTo(turn.angle, 9);
      for (const inside of line.straights.slice(1, -1)) expect(Math.abs(inside)).toBeLessThan(1e-9);
      expect(line.straights[0]).toBeCloseTo(30, 9);
      expect(turn.angle > Math.PI).toBe(away);
    });
  it('takes three points past 300°', () => {
    expect(partsOf(299 * RADIANS)).toBe(2);
    expect(partsOf(301 * RADIANS)).toBe(3);
    const ahead: Vec3 = [30, 300, 0];
    const turn = turnToward(FROM, START.direction, ahead, RADIUS, true)!;
    expect(turn.angle).toBeGreaterThan(301 * RADIANS);
    const arc = arcPoints(FROM, START.direction, turn.side, RADIUS, turn.angle, 3);
    const line = centerline([START.position, ...arc, ahead], [60, 60, 60]);
    expect(bends(line)[0]!.last).toBe(2);
  });
  it('has no tangent from inside the circle, nor a plane along the ray', () => {
    expect(turnToward(FROM, START.direction, [50, 40, 0], RADIUS, false)).toBeNull();
    expect(turnToward(FROM, START.direction, [0, 90, 0], RADIUS, false)).toBeNull();
  });
});

describe('set exactly again', () => {
  const to: Vec3 = [70, -120, 40];
  const end = pose([70, -200, 100], [0, -0.8, 0.6]);
  const turn = turnToward(FROM, START.direction, to, RADIUS, true)!;
  const arc = arcPoints(FROM, START.direction, turn.side, RADIUS, turn.angle, 2);
  const radii = [RADIUS, RADIUS, RADIUS];
  const shaken = arc.map((p, i): Vec3 => [p[0], p[1] + 0.3 * i, p[2] - 0.4 * i]);
  const before = bends(centerline([START.position, ...shaken, to, end.position], radii));

  it('as the first bend', () => {
    expect(before.length).toBe(3);
    const points = rejoined([START.position, ...shaken, to, end.position], radii, [true, false, false], START, end);
    expect(bends(centerline(points, radii)).length).toBe(2);
    expect(Math.hypot(...points[2]!.map((x, k) => x - arc[1]![k]!))).toBeLessThan(10);
  });
  it('as the last bend', () => {
    const back = [end.position, to, ...shaken.toReversed(), START.position];
    const ends = [pose(end.position, [0, 0.8, -0.6]), pose(START.position, [0, -1, 0])] as const;
    const points = rejoined(back, radii, [false, true, false], ...ends);
    expect(bends(centerline(back, radii)).length).toBe(3);
    expect(bends(centerline(points, radii)).length).toBe(2);
  });
});

const never = () => false;

function firstOf(design: Design, rounds: number): Settled | null {
  const task = taskOf(design, new Map());
  const stock = stockOf(task, 1);
  for (let n = 0; n < rounds; n++) {
    const plan = planOf(task, stock, n, randomNumbers(mixed(1, n)), never);
    const found = allOf(lay(task, plan, randomNumbers(mixed(1, n, 1)), never));
    if (found && found.miss <= FEASIBLE) return found;
  }
  return null;
}

describe('ends nearer together than two radii', () => {
  it('are joined by a continuous bend in two bends each', () => {
    const found = firstOf(opposed(3, 1.6 * RADIUS, 230, 2), 6)!;
    const layout = measuredLayout(found.design, new Map());
    expect(layout.report.problems).toEqual([]);
    for (const r of layout.report.runners) {
      expect(r.bends).toBe(2);
      expect(Math.max(...r.angles)).toBeGreaterThan(180);
    }
    expect(found.design.runners.map((r) => r.points!.length)).toEqual([5, 5, 5]);
  });
  it('are not where the bender stops at 170°', () => {
    expect(firstOf(opposed(1, 1.6 * RADIUS, 170, 2), 2)).toBeNull();
  });
});
