/** What is said of an engine that was or was not fitted, and where it is said. */
import { describe, expect, it } from 'vitest';
import { calibrationShort, calibrationWords } from '../../../src/app/forecast/calibration';
import type { PanelWish } from '../../../src/app/forecast/curve/frame';
import { legendOf } from '../../../src/app/forecast/curve/legend';
import { withColumn } from '../../../src/app/forecast/curve/withColumn';

const fitted = { flow: 1.02, friction: 0.95, heat: 1.1 };
const engineWith = (count: number) => ({
  fitted,
  baseline: { points: Array.from({ length: count }, (_, k): [number, number] => [2000 + 500 * k, 100]) },
});

describe('calibration', () => {
  it('is none without a fit', () => {
    expect(calibrationWords({})).toBe('Not calibrated');
    expect(calibrationShort(undefined)).toBe('Not calibrated');
  });
  it('is claimed only where there are more points than factors', () => {
    for (const count of [2, 3]) {
      expect(calibrationWords(engineWith(count), { fitted, rms: 0.5 })).toMatch(/proves nothing$/);
      expect(calibrationWords(engineWith(count), { fitted, rms: 0.5 })).not.toMatch(/Calibrated|0\.5/);
      expect(calibrationShort(engineWith(count))).not.toMatch(/^Calibrated/);
    }
    expect(calibrationWords(engineWith(3))).toContain('as many factors as points');
    expect(calibrationShort(engineWith(4))).toBe('Calibrated on 4 points');
  });
  it('says how far off in plain words, while that fit is in force', () => {
    expect(calibrationWords(engineWith(9), { fitted, rms: 2.13 })).toBe(
      'Calibrated on 9 points, off by 2.1\u00a0N\u00a0m on average',
    );
    expect(calibrationWords(engineWith(9), { fitted: { ...fitted, heat: 1 }, rms: 2.13 })).toBe(
      'Calibrated on 9 points',
    );
  });
});

it('a column more leaves line breaks within quotes alone', () => {
  // As the command line's tables end their rows.
  expect(withColumn('run\r\na\r\n', 'calibration', 'none')).toBe('run,calibration\r\na,none\r\n');
  expect(withColumn('run,why\na,"two\nlines, ""so"""\nb,x\n', 'calibration', 'Not calibrated')).toBe(
    'run,why,calibration\na,"two\nlines, ""so""",Not calibrated\nb,x,Not calibrated\n',
  );
  expect(withColumn('a\n1\n', 'b', 'x, y')).toBe('a,b\n1,"x, y"\n');
});

it('a picture names what is in it, and what was measured', () => {
  const paint = { colour: '#000', dash: [] } as unknown as PanelWish['series'][number]['paint'];
  const point = { rpm: 3000, value: 1, settled: true, final: true };
  const series = (title: string, points: readonly (typeof point)[]) =>
    ({ kind: 'header', title, paint, points, failed: [] }) as const;
  const panel: PanelWish = {
    quantity: 'torque',
    series: [series('This header', [point]), series('Sketch', [])],
    measured: [{ rpm: 3000, value: 1 }],
  };
  expect(legendOf([panel]).map(({ title }) => title)).toEqual([
    'This header',
    'Measured on the engine, brought to the crank',
  ]);
  expect(legendOf([{ ...panel, measured: [] }])).toHaveLength(1);
});
