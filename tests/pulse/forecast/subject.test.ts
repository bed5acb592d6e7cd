/** What of a design is followed, and the refusals where there is nothing to follow. */
import { describe, expect, test } from 'vitest';
import { readCsv } from '../../../src/formats/csv/readCsv';
import { curveCsv, traceCsv } from '../../../src/pulse/forecast/csv';
import { subjectOf } from '../../../src/pulse/forecast/subject';
import { answerAt, designIn, FOUR } from './fakes';

const four = designIn(FOUR);
const sketch = {
  arrangement: 'all-into-one',
  primary: { length: 700, bore: 40 },
  collector: { length: 200, bore: 54 },
} as const;
const unrouted = { ...four, runners: four.runners.map(({ points: _, radii: __, ...runner }) => runner) };

describe('followed is', () => {
  test('the header as laid out, the cast manifold, the sketch', () => {
    expect(subjectOf(four, 'header').title).toBe('laid-out header');
    expect(subjectOf(four, 'cast').title).toBe('cast manifold');
    const sketched = subjectOf({ ...four, exhaust: { sketch } }, 'sketch');
    expect(sketched.title).toBe('sketch');
    expect(sketched.notes).toEqual([]);
  });

  test('the sketch for a header that is not laid out, with a word', () => {
    const { title, notes } = subjectOf({ ...unrouted, exhaust: { sketch } }, 'header');
    expect(title).toBe('sketch');
    expect(notes[0]).toMatch(/not laid out yet: the sketch/);
  });

  test('half of a V alone where the other bank is not drawn, and each cylinder breathes as before', () => {
    const whole = subjectOf(designIn('public/examples/v8-both-banks.evenrun.json'), 'header');
    const half = subjectOf(designIn('public/examples/v8-left-bank-4-1.evenrun.json'), 'header');
    expect(half.engine.cylinders).toHaveLength(4);
    expect(half.engine.fires[half.engine.cylinders.indexOf(half.engine.firingOrder[0]!)]).toBe(0);
    expect(half.notes[0]).toMatch(/^Torque and power are of cylinders .* alone/);
    expect(whole.notes).toEqual([]);
    expect(half.engine.intake.throttleArea / whole.engine.intake.throttleArea).toBeCloseTo(0.5, 9);
  });
});

describe('refused', () => {
  test('runners that are not laid out, by name, with both remedies', () => {
    expect(() => subjectOf(unrouted, 'header')).toThrow(
      /^runners\/r1\/points: found nothing: r1, r2, r3, r4 are not laid out; allowed: runners with points: lay them .*; or lengths and bores in exhaust\/sketch/,
    );
  });
  test('no runners, no sketch', () => {
    expect(() => subjectOf({ ...four, runners: [] }, 'header')).toThrow(
      /^runners: found none; allowed: .*draw a header/,
    );
    expect(() => subjectOf(four, 'sketch')).toThrow(/^exhaust\/sketch: found nothing/);
  });
  test('an engine without bore or stroke', () => {
    const { bore: _, stroke: __, ...engine } = four.engine!;
    expect(() => subjectOf({ ...four, engine }, 'header')).toThrow(/engine\/bore: found nothing.* \(and 1 more\)/);
  });
});

describe('tables', () => {
  test('of a curve: engine people’s units, five decimals and more, a failed speed in its place', () => {
    const doubts = [{ kind: 'sonic' as const, message: 'fast' }];
    const rows = readCsv(curveCsv([answerAt(2000, 100.123456, { doubts }), { rpm: 3000, failed: 'it stopped, so' }]));
    expect(rows[0]).toMatchObject({
      ...{ rpm: '2000.00000000', torque_nm: '100.12345600', bmep_bar: '10.00000000', settled: 'yes', cycles: '9' },
      ...{ exhaust_temperature_c: '826.85000000', share_brake: '0.30000000', doubts: 'sonic', failed: '' },
    });
    expect(rows[1]).toMatchObject({ rpm: '3000.00000000', torque_nm: '', failed: 'it stopped, so' });
  });

  test('of traces: a row each degree of each cylinder', () => {
    const column = Float32Array.of(1, 2);
    const names = ['pressure', 'temperature', 'volume', 'exhaustPort', 'intakePort'] as const;
    const flows = ['exhaustFlow', 'intakeFlow', 'exhaustLift', 'intakeLift'] as const;
    const all = Object.fromEntries([...names, ...flows].map((name) => [name, column]));
    const trace = { cylinder: 3, angle: Float32Array.of(-360, -359), ...all } as never;
    const rows = readCsv(traceCsv([answerAt(2000, 100, { traces: [trace] }), answerAt(3000, 100)]));
    expect(rows.map((row) => [row.cylinder, Number(row.angle_deg), Number(row.exhaust_lift_mm)])).toEqual([
      ['3', -360, 1000],
      ['3', -359, 2000],
    ]);
  });
});
