/** Curves with level stretches: a stretch is one highest or lowest place, its middle, however many samples lie on it. */
import { describe, expect, test } from 'vitest';
import { extremes } from '../../../geometry';

const TURN = 2 * Math.PI;

describe('a curve cut off level', () => {
  test.each([0, 0.3, 1.7, 3, 6.2])('below, twice a turn, turned by %d', (turn) => {
    const { lowest, highest, min, max } = extremes((a) => Math.max(0, 10 * Math.cos(2 * (a - turn)) + 4));
    expect([min, max]).toEqual([0, expect.closeTo(14, 6)]);
    expect(lowest).toHaveLength(2);
    expect(highest).toHaveLength(2);
    for (const a of lowest) expect(Math.cos(2 * (a - turn))).toBeCloseTo(-1, 3);
  });

  test('above, across the seam', () => {
    const { highest, lowest } = extremes((a) => Math.min(5, 10 * Math.cos(a)));
    expect(highest).toHaveLength(1);
    expect(Math.min(highest[0]!, TURN - highest[0]!)).toBeLessThan(0.01);
    expect(lowest).toEqual([expect.closeTo(Math.PI, 6)]);
  });

  test('with a corner at either end of the stretch', () => {
    const corners = [Math.acos(0.5), TURN - Math.acos(0.5)];
    expect(extremes((a) => Math.min(5, 10 * Math.cos(a)), corners).highest).toHaveLength(1);
  });
});

test('a square cut is highest and lowest once, at the seam', () => {
  expect(extremes(() => 30)).toEqual({ highest: [0], lowest: [0], max: 30, min: 30 });
});
