/** The plot of an area schedule: where its line runs and which numbers its axes carry, in both displays. */
import { describe, expect, it } from 'vitest';
import type { AreaSchedule } from '../../../geometry';
import { type AreaPlot, areaPlot, PLOT } from '../../../src/app/inspect/extras/areaPlot';

const schedule = (from: number, to: number, length: number): AreaSchedule => ({
  port: 'p1',
  openingArea: from,
  boreArea: to,
  length,
  stations:
    length > 0
      ? [0, 0.5, 1].map((t) => ({ z: t * length, area: from + t * (to - from) }))
      : [from, to].map((area) => ({ z: 0, area })),
  uneven: 0,
  halfAngle: null,
  notMade: [],
  warnings: [],
});
const corners = ({ line }: AreaPlot) => line.split(' ').map((p) => p.split(',').map(Number) as [number, number]);
const isInside = ([x, y]: readonly [number, number]) =>
  x >= PLOT.left - 0.01 && x <= PLOT.width - PLOT.right + 0.01 && y >= PLOT.top && y <= PLOT.height - PLOT.bottom;

describe('the plot of an area schedule', () => {
  it('leads in level, goes over between flange and tube, and leads out level', () => {
    const plot = areaPlot(schedule(1000, 1200, 20), 'mm');
    const line = corners(plot);
    expect(line).toHaveLength(5);
    expect(line[0]![1]).toBe(line[1]![1]);
    expect(line[3]![1]).toBe(line[4]![1]);
    // A larger area stands higher.
    expect(line[4]![1]).toBeLessThan(line[0]![1]);
    expect([line[1]![0], line[3]![0]]).toEqual([plot.flange, plot.tube].map((x) => Number(x.toFixed(2))));
    expect(line.every(isInside)).toBe(true);
  });

  it('shows a step as one where there is no transition', () => {
    const plot = areaPlot(schedule(1000, 1200, 0), 'mm');
    const line = corners(plot);
    expect(plot.flange).toBe(plot.tube);
    expect(line[1]![0]).toBe(line[2]![0]);
    expect(line[1]![1]).not.toBe(line[2]![1]);
  });

  it('carries round numbers in the unit of the display, each where it belongs', () => {
    const mm = areaPlot(schedule(1000, 1200, 20), 'mm');
    expect(mm.xMarks.map(({ label }) => label)).toEqual(['0', '10', '20']);
    expect(mm.yMarks.map(({ label }) => label)).toEqual(['1000', '1050', '1100', '1150', '1200']);
    expect(mm.xMarks[0]!.at).toBeCloseTo(mm.flange, 9);
    expect(mm.yMarks.at(-1)!.at).toBeCloseTo(mm.stations.at(-1)![1], 9);
    const inch = areaPlot(schedule(645.16, 1290.32, 25.4), 'in');
    expect(inch.xMarks.find(({ label }) => Number(label) === 1)!.at).toBeCloseTo(inch.tube, 9);
    expect(inch.yMarks.find(({ label }) => Number(label) === 2)!.at).toBeCloseTo(inch.stations.at(-1)![1], 9);
  });

  it('does not make much of nothing', () => {
    const line = corners(areaPlot(schedule(1000, 1001, 20), 'mm'));
    expect(Math.abs(line[0]![1] - line[4]![1])).toBeLessThan(1);
  });
});
