/** Lift curve and flow coefficients where nobody measured them. */
import { describe, expect, test } from 'vitest';
import { usualFlow } from '../../../src/pulse/engine/setup/flowCoefficients';
import { smoothLifts, trimmedLifts } from '../../../src/pulse/engine/setup/liftCurve';
import { flowValue, sourceOf } from '../../reference/flow';

describe('the smooth lift curve', () => {
  const lifts = smoothLifts(-12, 228, 9.5);

  test('is shut at both ends, highest in the middle and the same both ways', () => {
    expect(lifts[0]).toEqual([-12, 0]);
    expect(lifts.at(-1)).toEqual([228, 0]);
    expect(lifts[(lifts.length - 1) / 2]).toEqual([108, 9.5]);
    lifts.forEach(([, lift], i) => {
      expect(lift).toBeCloseTo(lifts[lifts.length - 1 - i]![1], 12);
    });
  });

  test('rises to its middle, in rows that are no more than 2° apart', () => {
    lifts.slice(1).forEach(([angle, lift], i) => {
      expect(angle - lifts[i]![0]).toBeGreaterThan(0);
      expect(angle - lifts[i]![0]).toBeLessThanOrEqual(2);
      if (angle <= 108) expect(lift).toBeGreaterThan(lifts[i]![1]);
    });
  });

  test('has the mean of its closed form, 25/42 of the lift', () => {
    let area = 0;
    for (const [i, [angle, lift]] of lifts.slice(1).entries())
      area += ((angle - lifts[i]![0]) * (lift + lifts[i]![1])) / 2;
    expect(area / 240 / 9.5).toBeCloseTo(25 / 42, 4);
  });

  test('straight lines between its rows are off by 0.05 % of the lift at most', () => {
    for (let i = 1; i < lifts.length; i++) {
      const [a, b] = [lifts[i - 1]!, lifts[i]!];
      const s = ((a[0] + b[0]) / 2 - 108) / 120;
      const exact = 9.5 * (1 - Math.abs(s) ** 2.5) ** 2;
      expect(Math.abs((a[1] + b[1]) / 2 - exact)).toBeLessThan(0.0005 * 9.5);
    }
  });

  test('starts and ends without a jerk: its slope is 0 there', () => {
    expect(lifts[1]![1] / 9.5).toBeLessThan(0.002);
  });
});

test('a measured curve loses what lies shut before and behind it, and nothing between', () => {
  const rows = [
    [-200, 0],
    [-10, 0],
    [50, 4],
    [60, 0],
    [100, 9],
    [230, 0],
    [300, 0],
  ] as const;
  expect(trimmedLifts(rows)).toEqual(rows.slice(1, 6));
  expect(trimmedLifts(rows.slice(1, 6))).toEqual(rows.slice(1, 6));
});

describe(`flow coefficients lie in the published bands: ${sourceOf('si.valve_cd')}`, () => {
  const bands = flowValue<{ inlet: [number, number]; exhaust: [number, number] }>('si.valve_cd');
  test.each([
    ['intake', bands.inlet],
    ['exhaust', bands.exhaust],
  ] as const)('%s', (side, [least, most]) => {
    const rows = usualFlow(side);
    for (const [ratio, coefficient] of rows.filter(([x]) => x <= 0.25)) {
      expect(coefficient, `at ${ratio}`).toBeGreaterThanOrEqual(least);
      expect(coefficient, `at ${ratio}`).toBeLessThanOrEqual(most);
    }
    // Falls all the way, and beyond a quarter of the diameter the area that flows stays.
    rows.slice(1).forEach(([ratio, coefficient], i) => {
      expect(ratio).toBeGreaterThan(rows[i]![0]);
      expect(coefficient).toBeLessThanOrEqual(rows[i]![1]);
    });
    const quarter = rows.find(([ratio]) => ratio === 0.25)!;
    for (const [ratio, coefficient] of rows.filter(([x]) => x > 0.25))
      expect(ratio * coefficient).toBeCloseTo(quarter[0] * quarter[1], 12);
  });
});
