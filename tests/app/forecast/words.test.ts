/** Orders, differences, tables and pasted curves: what is said of numbers, without a page. */
import { describe, expect, it } from 'vitest';
import { framePlot, pointUnder, rpmToPx, valueToPx } from '../../../src/app/forecast/curve/frame';
import { movedBy } from '../../../src/app/forecast/curve/moved';
import { measuredPoints, paintFor, seriesOf } from '../../../src/app/forecast/curve/series';
import { curvesCsv, curvesJson } from '../../../src/app/forecast/curve/tables';
import { readMeasured, writeMeasured } from '../../../src/app/forecast/engine/baselineText';
import { takenNumber } from '../../../src/app/forecast/engine/given';
import { gainsOf, gainWords, meanGainWords } from '../../../src/app/forecast/gains';
import { readOff, wordsFor } from '../../../src/app/forecast/quantities';
import { emptyRun, type Run, type RunKind, withTold } from '../../../src/app/forecast/runs';
import { spread } from '../../../src/app/forecast/spread';
import { curveCsv } from '../../../src/pulse/forecast/csv';
import { answerOf, subject } from './fixtures';

const SPEEDS = [2000, 4000, 6000];
/** @param torques null: not followed yet; words: why not */
const runOf = (kind: 'header' | 'cast', torques: readonly (number | string | null)[]): Run =>
  torques.reduce<Run>(
    (run, torque, k) => {
      const rpm = SPEEDS[k]!;
      if (torque === null) return run;
      return withTold(run, k, typeof torque === 'string' ? { rpm, failed: torque } : answerOf(rpm, { torque }));
    },
    emptyRun(subject(kind), SPEEDS),
  );

it('speeds come ends first, then the middle of the widest gap, each once', () => {
  expect(spread(1)).toEqual([0]);
  expect(spread(5)).toEqual([4, 0, 2, 1, 3]);
  for (const count of [0, 2, 12, 37])
    expect([...spread(count)].sort((a, b) => a - b)).toEqual([...Array(count).keys()]);
  expect(
    spread(12)
      .slice(0, 4)
      .toSorted((a, b) => a - b),
  ).toEqual([0, 5, 8, 11]);
});

describe('what one run gains over another', () => {
  const over = runOf('cast', [100, 100, 100]);
  it('is told where most is gained and most lost', () => {
    const gains = gainsOf(runOf('header', [95, 112.5, 104]), over);
    expect(gains.map(({ torque }) => torque)).toEqual([-5, 12.5, 4]);
    expect(gainWords(gains, 'mm').replaceAll('\u00a0', ' ')).toBe(
      'gains most at 4000 rpm: +12.5 N m (+12.5 %); loses most at 2000 rpm: −5.0 N m (−5.0 %)',
    );
    expect(gainWords(gains, 'in')).toContain('+9.2\u00a0lb\u00a0ft (+12.5\u00a0%)');
  });
  it('says nowhere, and what is too little to tell, in words', () => {
    expect(gainWords(gainsOf(runOf('header', [101, 112, 104]), over), 'mm')).toMatch(/; loses nowhere$/);
    expect(gainWords(gainsOf(runOf('header', [99, 98, 97]), over), 'mm')).toMatch(/^gains nowhere; loses most at 6000/);
    expect(gainWords(gainsOf(runOf('header', [100.05, 100, 99.95]), over), 'mm')).toBe(
      'differs by less than 0.1 % at every speed',
    );
  });
  it('is told on average over the band, by the areas under both curves, once all of it is there', () => {
    // (−5 + 12.5) / 2 over half of the band, (12.5 + 4) / 2 over the other half.
    expect(meanGainWords(runOf('header', [95, 112.5, 104]), over, 'mm', 3)?.replaceAll('\u00a0', ' ')).toBe(
      'On average from 2000 to 6000 rpm: +6.0 N m (+6.0 %).',
    );
    expect(meanGainWords(runOf('header', [95, 112.5, null]), over, 'mm', 3)).toBeNull();
  });
  it('says of part of a curve that it is part', () => {
    const gains = gainsOf(runOf('header', [null, 112, null]), over);
    expect(gainWords(gains, 'mm', 3)).toMatch(/^so far, at 1 of 3 speeds, gains most at .*; not yet seen to lose$/);
    expect(gainWords(gains, 'mm', 3)).not.toContain('nowhere');
  });
  it('speaks of speeds that both have alone', () => {
    expect(gainsOf(runOf('header', [null, 'no', 101]), over).map(({ rpm }) => rpm)).toEqual([6000]);
    expect(gainWords(gainsOf(runOf('header', [null, null, null]), over), 'mm')).toMatch(/^cannot be compared yet/);
  });
});

it('numbers are shown in the units of the design', () => {
  const answer = answerOf(4000, {
    torque: 135.58179483,
    power: 74569.987158,
    exhaustTemperature: 1273.15,
    volumetricEfficiency: 0.92,
  });
  expect(readOff('torque', answer, 'in')).toBeCloseTo(100, 4);
  expect(readOff('power', answer, 'in')).toBeCloseTo(100, 4);
  expect(readOff('heat', answer, 'mm')).toBeCloseTo(1000, 9);
  expect(readOff('heat', answer, 'in')).toBeCloseTo(1832, 9);
  expect(readOff('filling', answer, 'mm')).toBeCloseTo(92, 9);
  expect(wordsFor('pumping', 'mm').meaning).toContain('below 0 it costs');
});

describe('the plot', () => {
  const runs = [runOf('header', [95, 112, 'stopped']), runOf('cast', [100, 100, 100])];
  const series = seriesOf(runs, 'torque', 'mm', 'light');
  const frame = framePlot([{ quantity: 'torque', series, measured: [] }], SPEEDS, 'mm', 600, 400);
  const [panel] = frame.panels;
  it('has every value within its panel, and finds the point under a pointer', () => {
    for (const { points } of series)
      for (const { rpm, value } of points) {
        const y = valueToPx(panel!, value);
        expect(y).toBeGreaterThanOrEqual(panel!.top - 0.01);
        expect(y).toBeLessThanOrEqual(panel!.top + panel!.height + 0.01);
        expect(rpmToPx(frame, rpm)).toBeGreaterThan(frame.left);
      }
    expect(pointUnder(frame, rpmToPx(frame, 4000) + 5, valueToPx(panel!, 112) - 4)).toEqual({
      kind: 'header',
      rpm: 4000,
    });
    expect(series[0]!.failed).toEqual([6000]);
  });
  it('is read by the arrow keys: along a curve, and to the other one at the same speed', () => {
    const at = { kind: 'header', rpm: 4000 } as const;
    expect(movedBy('ArrowLeft', at, series)).toEqual({ kind: 'header', rpm: 2000 });
    expect(movedBy('ArrowRight', at, series)).toEqual(at);
    expect(movedBy('ArrowDown', at, series)).toEqual({ kind: 'cast', rpm: 4000 });
    expect(movedBy('ArrowUp', at, series)).toEqual(at);
    expect(movedBy('End', null, series)).toEqual({ kind: 'header', rpm: 4000 });
    expect(movedBy('ArrowRight', null, series)).toEqual({ kind: 'header', rpm: 4000 });
    expect(movedBy('x', at, series)).toBe(null);
    expect(movedBy('Home', null, [])).toBe(null);
  });
  it('stands where nothing is followed yet, and where there is one speed', () => {
    const empty = framePlot([{ quantity: 'torque', series: [], measured: [] }], [], 'mm', 300, 200);
    expect(empty.panels[0]!.up.at).toEqual([]);
    expect(empty.across.at).toEqual([]);
    const alone = framePlot([{ quantity: 'torque', series, measured: [] }], [3000], 'mm', 300, 200);
    expect(rpmToPx(alone, 3000)).toBeCloseTo(alone.left + alone.inner / 2, 6);
  });
  it('has a scale of several numbers where it is as low as on a phone', () => {
    const { points: _, ...first } = series[0]!;
    const steep = [
      { ...first, points: [130, 195].map((value, k) => ({ ...series[0]!.points[0]!, rpm: SPEEDS[k]!, value })) },
    ];
    const wishes = (['torque', 'power'] as const).map((quantity) => ({ quantity, series: steep, measured: [] }));
    const { panels } = framePlot(wishes, SPEEDS, 'mm', 366, 300);
    for (const { up } of panels) expect(up.at.length).toBeGreaterThan(1);
  });
  it('makes no mountain of one number, and reaches to what was measured', () => {
    const one = seriesOf([runOf('header', [168, null, null])], 'torque', 'mm', 'light');
    const { panels, to } = framePlot(
      [{ quantity: 'torque', series: one, measured: [{ rpm: 7000, value: 168 }] }],
      SPEEDS,
      'mm',
      600,
      400,
    );
    expect(panels[0]!.high - panels[0]!.low).toBeGreaterThanOrEqual(16);
    expect(to).toBe(7000);
  });
  it('keeps a run’s paint whichever others are shown, and shows what was measured at the crank', () => {
    expect(paintFor('cast', 'light').dash.length).toBeGreaterThan(0);
    const kinds: readonly RunKind[] = [
      'header',
      'cast',
      'sketch',
      'equal',
      'uneven',
      'arrangement',
      'other/x',
      'other/y',
    ];
    const looks = () => kinds.map((kind) => JSON.stringify(paintFor(kind, 'dark')));
    const before = looks();
    expect(new Set(before).size).toBe(kinds.length);
    expect(new Set(kinds.map((kind) => paintFor(kind, 'light').colour)).size).toBe(kinds.length);
    expect(looks()).toEqual(before);
    const baseline = { points: [[3000, 85]], loss: 15 } as const;
    expect(measuredPoints(baseline, 'torque', 'mm')).toEqual([{ rpm: 3000, value: 100 }]);
    expect(measuredPoints(baseline, 'power', 'mm')[0]!.value).toBeCloseTo(31.4159, 3);
    expect(measuredPoints(baseline, 'torque', 'mm', 0.5)[0]!.value).toBeCloseTo(50, 9);
    expect(measuredPoints(baseline, 'residual', 'mm')).toEqual([]);
  });
});

describe('a curve that is pasted', () => {
  it('is read with tabs, commas, headings and units, in any order', () => {
    const points = [
      [2000, 118],
      [3000, 142.5],
    ];
    for (const text of [
      '3000 142.5\n2000 118',
      'rpm, torque\n2000, 118\n3000, 142.5',
      '2000\t118\n\n3000\t142,5',
      '# at the brake\n2000 rpm 118 Nm\n3000 rpm 142.5 Nm',
      '2000;118\r\n3000;142,5',
    ])
      expect(readMeasured(text, 'N m'), text).toEqual({ ok: true, points });
  });
  it('is brought to N m and back', () => {
    const read = readMeasured('3000 100', 'lb ft');
    expect(read).toEqual({ ok: true, points: [[3000, 135.58]] });
    expect(readMeasured('3000 10', 'kgf m')).toEqual({ ok: true, points: [[3000, 98.07]] });
    expect(writeMeasured([[3000, 135.58]], 'lb ft')).toBe('3000 100');
  });
  it('may part thousands in the speed', () => {
    for (const text of ['6,000 120', '6,000\t120.0', '6.000 120', '6,000 rpm 120 Nm', '6,000, 120'])
      expect(readMeasured(text, 'N m'), text).toEqual({ ok: true, points: [[6000, 120]] });
  });
  it('is refused by its line where a number is beyond what can be, or a speed comes twice', () => {
    const problem = (text: string) => {
      const read = readMeasured(text, 'N m');
      return read.ok ? null : read.problem;
    };
    expect(problem('2000 118\n3000 -5')).toMatch(/^Line 2, “3000 -5”: a torque above 0/);
    expect(problem('2000 118\n50 100')).toMatch(/^Line 2, “50 100”: a speed from 100 to 30000 rpm/);
    expect(problem('2000 118\n3000 142\n2000 119')).toMatch(/^Line 3, “2000 119”: .* stands in line 1 already/);
  });
  it('is refused with its line', () => {
    expect(readMeasured('2000 118\n3000', 'N m')).toEqual({
      ok: false,
      problem: 'Line 2, “3000”: a speed in rpm and a torque are wanted, such as 3000 142.',
    });
    expect(readMeasured('nothing here', 'N m').ok).toBe(false);
  });
});

it('what is taken stands as a number in its field where it is one', () => {
  expect(takenNumber('136.5 mm')).toBe(136.5);
  expect(takenNumber('−12°')).toBe(-12);
  expect(takenNumber('95 % of what the air can release')).toBe(0.95);
  expect(takenNumber('evenly')).toBe('evenly');
});

describe('what is taken away', () => {
  const runs = [runOf('header', [95, 'it said, "no"', null]), runOf('cast', [100, 100, 100])];
  it('as a table has a row for each speed that was followed, failures with their reason', () => {
    const [head, ...rows] = curvesCsv(runs).trim().split(/\r?\n/);
    expect(head).toMatch(/^run,rpm,torque_nm,power_kw,/);
    expect(rows).toHaveLength(5);
    expect(rows[0]).toMatch(/^This header,2000\.0*,95\.0*,/);
    expect(rows[1]).toMatch(/^This header,4000\.0*,,.*,"it said, ""no"""$/);
    const commas = (line: string) => line.replace(/"([^"]|"")*"/g, '').split(',').length;
    for (const row of rows) expect(commas(row)).toBe(commas(head!));
  });
  it('as a table has the columns and numbers that the command line writes', () => {
    const [, cast] = runs;
    const own = curveCsv(cast!.told.filter((answer) => answer !== null)).split('\n');
    const [head, ...rows] = curvesCsv([cast!]).split('\n');
    expect(head).toBe(`run,${own[0]}`);
    expect(rows).toEqual(own.slice(1).map((row) => row && `Cast manifold,${row}`));
  });
  it('as it is has engine, pipes, what was taken, and every answer', () => {
    const { runs: written } = JSON.parse(curvesJson(runs));
    expect(written[0].answers).toHaveLength(2);
    expect(written[0].engine.bore).toBe(0.083);
    expect(written[0].assumed[0].path).toBe('engine/rod');
    expect(written[1].answers[0].torque).toBe(100);
  });
});
