/** What one curve has over another, by hand; and what differs between engines. */
import { expect, test } from 'vitest';
import { readCsv } from '../../../src/formats/csv/readCsv';
import { against, engineDifferences, isSame } from '../../../src/pulse/forecast/against';
import { comparisonCsv } from '../../../src/pulse/forecast/csv';
import { subjectOf } from '../../../src/pulse/forecast/subject';
import { answerAt, designIn, FOUR } from './fakes';

const curve = (...torques: (number | null)[]) =>
  torques.map((torque, k) => {
    const rpm = 1000 * (k + 2);
    return torque === null ? { rpm, failed: 'no' } : answerAt(rpm, torque);
  });

test('gain, loss, area and mean within the band', () => {
  const found = against(curve(100, 120, 110, 90), curve(104, 118, 110, 99), [2500, 5000]);
  expect(found.rows.map(({ gain }) => gain)).toEqual([4, -2, 0, 9]);
  expect(found.rows[3]!.percent).toBeCloseTo(10, 9);
  expect([found.greatestGain!.rpm, found.greatestLoss!.rpm]).toEqual([5000, 3000]);
  // 2500–3000: from 1 to −2; 3000–4000: −2 to 0; 4000–5000: 0 to 9.
  expect(found.area!.gained).toBeCloseTo(-0.5 * 500 - 1000 + 4500, 6);
  expect(found.area!.after - found.area!.before).toBeCloseTo(found.area!.gained, 6);
  expect(found.mean).toBeCloseTo(found.area!.gained / 2500, 9);
});

test('speeds that one did not answer are left out and named; no loss anywhere is none', () => {
  const found = against(curve(100, null, 110), curve(101, 130, 111), [2000, 4000]);
  expect([found.missing.map(({ rpm }) => rpm), found.rows.map(({ rpm }) => rpm)]).toEqual([[3000], [2000, 4000]]);
  expect(found.greatestLoss).toBeNull();
  const rows = readCsv(comparisonCsv(found)).map((row) => [Number(row.rpm), row.after_nm, row.gain_nm, row.failed]);
  expect(rows).toEqual([
    [2000, '101.00000000', '1.00000000', ''],
    [3000, '130.00000000', '', 'before: no'],
    [4000, '111.00000000', '1.00000000', ''],
  ]);
});

test('what has not settled is told of each side, in the table too', () => {
  const wild = [
    answerAt(2000, 100),
    answerAt(3000, 100, { settled: false, doubts: [{ kind: 'unsettled', message: '' }] }),
  ];
  const rows = readCsv(comparisonCsv(against(curve(100, 100), wild, [2000, 3000])));
  expect(rows.map(({ before_settled, after_settled }) => [before_settled, after_settled])).toEqual([
    ['yes', 'yes'],
    ['yes', 'no'],
  ]);
  expect([rows[1]!.before_doubts, rows[1]!.after_doubts]).toEqual(['', 'unsettled']);
});

test('a mean that settling could have made is marked, a greater one is not', () => {
  const mean = (after: number) => against(curve(100, 100), curve(after, after), [2000, 3000]);
  expect(mean(100.1)).toMatchObject({ isWithinNoise: true, covered: [2000, 3000] });
  expect(mean(100.1).noise).toBeCloseTo(0.2, 9);
  expect(mean(101).isWithinNoise).toBe(false);
});

test('the same under another name is the same; another bore is not', () => {
  const { engine, path } = subjectOf(designIn(FOUR), 'header');
  const renamed = { engine: { ...engine, speeds: [1, 2] as const }, path: { ...path, title: 'other' } };
  expect(isSame({ engine, path }, renamed)).toBe(true);
  expect(isSame({ engine, path }, { engine: { ...engine, bore: 0.09 }, path })).toBe(false);
});

test('nothing answered, nothing said; other speeds are refused', () => {
  const found = against(curve(null, null), curve(1, 2), [2000, 3000]);
  expect([found.rows, found.area, found.mean, found.greatestGain]).toEqual([[], null, null, null]);
  expect(() => against(curve(1), curve(1, 2), [2000, 3000])).toThrow(/same speeds/);
});

test('engines that differ are told by what differs; the speeds they are used at do not count', () => {
  const { engine } = subjectOf(designIn(FOUR), 'header');
  expect(engineDifferences(engine, { ...engine, speeds: [1, 2] })).toEqual([]);
  const other = { ...engine, bore: 0.09, exhaustValve: { ...engine.exhaustValve, diameter: 0.03 } };
  expect(engineDifferences(engine, other)).toEqual(['bore', 'exhaust valve']);
});
