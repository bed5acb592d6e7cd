/**
 * The pipe trade's offset constants and worked rolling offsets (keys off.*), each rebuilt as a tube with two equal bends.
 * Travel is measured between the bends' intersections, so it holds for any radius that fits.
 */
import { describe, expect, test } from 'vitest';
import { bendTable, centerline, distance } from '../../geometry';
import { chain } from '../../geometry/clearance/chain';
import { tubeToTube } from '../../geometry/clearance/tubeTube';
import type { Vec3 } from '../../shared/vec3';
import { published } from './published';

const RADIANS = Math.PI / 180;

/** Runs along x, then rises (z) and rolls (y) at `degrees` to x, then runs along x again. */
function rollingOffset(rise: number, roll: number, degrees: number, radius: number) {
  const offset = Math.hypot(rise, roll);
  const run = offset / Math.tan(degrees * RADIANS);
  const lead = offset;
  const points: Vec3[] = [
    [0, 0, 0],
    [lead, 0, 0],
    [lead + run, roll, rise],
    [2 * lead + run, roll, rise],
  ];
  return centerline(points, [radius, radius]);
}
const travelOf = (line: ReturnType<typeof centerline>): number => distance(line.points[1]!, line.points[2]!);
const runOf = (line: ReturnType<typeof centerline>): number => line.points[2]![0] - line.points[1]![0];

/** Two bends of the angle, the second turned half round: whatever the roll. */
function expectTwoEqualBends(line: ReturnType<typeof centerline>, degrees: number, radius: number): void {
  const { rows } = bendTable(line, [0, 0, 1]);
  expect(rows).toHaveLength(3);
  expect(rows[0]!.angle).toBeCloseTo(degrees, 8);
  expect(rows[1]!.angle).toBeCloseTo(degrees, 8);
  expect(rows[1]!.rotation).toBeCloseTo(180, 6);
  // The bends take a setback each out of the travel, and give back less than they took.
  const reach = radius * Math.tan((degrees / 2) * RADIANS);
  expect(rows[1]!.length).toBeCloseTo(travelOf(line) - 2 * reach, 8);
  const legs = line.points.slice(1).reduce((sum, p, i) => sum + distance(p, line.points[i]!), 0);
  expect(line.length).toBeCloseTo(legs - 4 * reach + 2 * radius * degrees * RADIANS, 8);
}

type Constants = { travel_per_offset: number; run_per_offset: number; offset_per_travel: number };
describe.each([60, 45, 30, 22.5, 11.25])('an offset of %d°', (degrees) => {
  const constants = published<Constants>(`off.${degrees}`);
  test.each([0.04, 16, 60])('has the published travel and run whatever the bends’ radius: %d', (radius) => {
    const line = rollingOffset(100, 0, degrees, radius);
    expect(travelOf(line) / 100).toBeCloseTo(constants.travel_per_offset, 5);
    expect(runOf(line) / 100).toBeCloseTo(constants.run_per_offset, 5);
    expect(100 / travelOf(line)).toBeCloseTo(constants.offset_per_travel, 5);
    expectTwoEqualBends(line, degrees, radius);
  });
});

// Each further tube starts its offset earlier (or later) by the published part of the spread, and so keeps its distance.
test.each([60, 45, 30, 22.5, 11.25])('parallel offsets of %d° keep their spread', (degrees) => {
  const { parallel_shift_per_spread: shift } = published<{ parallel_shift_per_spread: number }>(`off.${degrees}`);
  const [spread, radius] = [50, 5];
  const line = rollingOffset(0, 300, degrees, 40);
  const beside = centerline(
    line.points.map(([x, y, z]): Vec3 => [x - shift * spread, y + spread, z]),
    line.radii,
  );
  const gap = tubeToTube(chain(line, radius)!, chain(beside, radius)!)!.gap;
  expect(gap).toBeCloseTo(spread - 2 * radius, 2);
});

describe('worked rolling offsets', () => {
  type Worked = { true: number; travel: number; run?: number; cut?: number };
  test('roll 11.5, rise 15.5 in, 45° (off.ex1)', () => {
    const it = published<Worked>('off.ex1');
    const line = rollingOffset(15.5, 11.5, 45, 3);
    expect(Math.hypot(15.5, 11.5)).toBeCloseTo(it.true, 5);
    expect(travelOf(line)).toBeCloseTo(it.travel, 5);
    expect(runOf(line)).toBeCloseTo(it.run!, 5);
    expectTwoEqualBends(line, 45, 3);
  });

  // The source prints 46 for 50 − 6: a slip of arithmetic (44).
  test('rise 30.625, roll 17.625 in, 45°, less a take-off of 3 at each end (off.ex2)', () => {
    const it = published<Worked>('off.ex2');
    // The bend whose setback is the take-off: the straight between is then the piece that is cut.
    const radius = 3 / Math.tan(22.5 * RADIANS);
    const line = rollingOffset(47.5 - 16.875, 50 - 32.375, 45, radius);
    expect(travelOf(line)).toBeCloseTo(it.travel, 5);
    expect(line.straights[1]).toBeCloseTo(it.cut!, 5);
    expectTwoEqualBends(line, 45, radius);
  });

  test('rise 8, roll 12: the true offset (off.ex3)', () => {
    const line = rollingOffset(8, 12, 45, 2);
    expect(travelOf(line) * Math.SQRT1_2).toBeCloseTo(published<number>('off.ex3'), 5);
    expectTwoEqualBends(line, 45, 2);
  });

  test('12 in with 60° fittings (off.ex4), printed to three decimals', () => {
    const it = published<{ run: number; travel: number }>('off.ex4');
    const line = rollingOffset(12, 0, 60, 2);
    expect(Math.abs(travelOf(line) - it.travel)).toBeLessThan(0.001);
    expect(Math.abs(runOf(line) - it.run)).toBeLessThan(0.001);
    expectTwoEqualBends(line, 60, 2);
  });
});
