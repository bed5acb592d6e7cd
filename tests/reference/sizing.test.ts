/**
 * The sizing formulas on their published worked values (sizing.json, each with its source and confidence). Where a source
 * prints no worked value, the value was computed apart from this code, and says `recomputed`.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { OPEN_END, soundSpeed } from '../../shared/engine/sizing/gas';
import { coneLength, enclosing, OUTLET_SHARES, stepBore } from '../../shared/engine/sizing/joinedPipes';
import {
  gasSpeedBore,
  lengthMatchedBore,
  MEAN_GAS_SPEED,
  torqueSpeedBore,
} from '../../shared/engine/sizing/primaryBores';
import {
  matchedLength,
  openingPeriodLength,
  outAndBackLength,
  quarterWaveLength,
} from '../../shared/engine/sizing/primaryLengths';
import { MM_PER_INCH } from '../../shared/units';

const file = JSON.parse(readFileSync(new URL('sizing.json', import.meta.url), 'utf8')) as {
  values: Record<string, { value: unknown }>;
};
function published<T>(key: string): T {
  const entry = file.values[key];
  if (!entry) throw new Error(`no published value ${key}`);
  return entry.value as T;
}
/** The values were written down with six digits: half of the last may be rounding, 5 parts in a million at most. */
const near = (found: number, wanted: number) => expect(Math.abs(found / wanted - 1)).toBeLessThan(5e-6);

describe('opening-period rule: handbook, read in source; values recomputed (rule.imperial_length)', () => {
  const rows = published<{ EVO: number; N: number; P_in: number; P_mm: number }[]>('rule.imperial_length');
  test.each(rows)('opens $EVO before the bottom, $N rpm: $P_in in', ({ EVO, N, P_in, P_mm }) => {
    const mm = openingPeriodLength(-180 - EVO, N);
    near(mm, P_mm);
    near(mm / MM_PER_INCH, P_in);
  });
});

describe('bore for length: handbook, from memory; values recomputed (rule.imperial_id)', () => {
  const rows = published<{ cc: number; P: number; ID_in: number; ID_mm: number }[]>('rule.imperial_id');
  test.each(rows)('$cc cc, $P in: $ID_in in', ({ cc, P, ID_in, ID_mm }) => {
    const mm = lengthMatchedBore(cc * 1000, P * MM_PER_INCH);
    near(mm, ID_mm);
    near(mm / MM_PER_INCH, ID_in);
  });
});

test('step of the handbook, from memory: 0.93 √2 for a pair (rule.imperial_id2)', () => {
  near(stepBore(40, 2), 40 * published<number>('rule.imperial_id2'));
});

describe('torque-peak area: magazine, read in source; values recomputed (rule.88200)', () => {
  const rows = published<{ V_in3: number; N: number; id_in: number }[]>('rule.88200');
  test.each(rows)('$V_in3 cubic inches, $N rpm: $id_in in', ({ V_in3, N, id_in }) => {
    near(torqueSpeedBore(V_in3 * MM_PER_INCH ** 3, N), id_in * MM_PER_INCH);
  });

  // The article gives 240 to 260 ft/s in the pipe around the torque's peak; the mean over a stroke is what that means.
  test('its constant is a mean gas speed of 245 ft/s over a stroke', () => {
    const [bore, stroke, rpm] = [88, 80, 5000];
    const cylinder = (Math.PI / 4) * bore ** 2 * stroke;
    const feet = 245 * 0.3048;
    expect(gasSpeedBore(bore, stroke, rpm, feet)).toBeCloseTo(torqueSpeedBore(cylinder, rpm), 6);
  });
});

test('out and back: worked, recomputed (rule.wave)', () => {
  const { c, theta, N, L } = published<{ c: number; theta: number; N: number; L: number }>('rule.wave');
  near(outAndBackLength(c, theta, N), L * 1000);
});

test('inertia matching: paper’s abstract, read in source; value recomputed (ex.fukuda_izumi_1965)', () => {
  const { worked } = published<{ worked: { l: number } }>('ex.fukuda_izumi_1965');
  // The worked length takes in the open end's correction, which a pipe of no width does not have.
  near(matchedLength(500, 240, 6000, 0), worked.l * 1000);
  expect(matchedLength(500, 240, 6000, 40)).toBeCloseTo(worked.l * 1000 - 20 * OPEN_END, 2);
});

test('open end’s correction: abstract, read in source, good to 0.5 % (ac.end_unflanged)', () => {
  expect(Math.abs(OPEN_END / published<number>('ac.end_unflanged') - 1)).toBeLessThan(0.005);
});

describe('quarter wave (ac.closed_open, recomputed: a pipe 1 m long, radius 20 mm)', () => {
  const { c, no_end_corr, unflanged } = published<{ c: number; no_end_corr: number[]; unflanged: number[] }>(
    'ac.closed_open',
  );
  // At the pipe's own note a swing takes 1/f; from opening to the second low are one and a half.
  const lengthAt = (f: number, bore: number) => {
    const rpm = 6000;
    const swings = 1.5;
    return quarterWaveLength(c, -240, -240 + (swings / f) * 6 * rpm, rpm, bore);
  };
  test('without the end’s correction', () => near(lengthAt(no_end_corr[0]!, 0), 1000));
  test('with it', () => near(lengthAt(unflanged[0]!, 40), 1000));
});

test('mean gas speed lies within the textbook’s range (gas.speed, read in source)', () => {
  const [least, most] = published<[number, number]>('gas.speed');
  expect(MEAN_GAS_SPEED).toBe((least + most) / 2);
  // Recomputed by hand: 80 × √(2 × 0.09 m × 6000 / 60 s / 95 m/s) = 34.823 mm
  expect(gasSpeedBore(80, 90, 6000)).toBeCloseTo(34.823, 3);
});

test('outlet shares of four, from memory: 1.6 to 1.9 × the bore (col.outlet)', () => {
  expect(published<string>('col.outlet')).toContain('1.6-1.9 x primary for 4-1');
  expect([2 * OUTLET_SHARES.least, 2 * OUTLET_SHARES.most]).toEqual([1.6, 1.9]);
});

test('cone between circles and the circle around four tubes, recomputed (col.cone, col.4)', () => {
  const cones = Object.entries(published<Record<string, number>>('col.cone'));
  expect(cones).toHaveLength(3);
  for (const [angle, length] of cones) near(coneLength(100, 63.5, Number(angle)), length);
  near(enclosing(42.4, 4), 42.4 * published<{ enclosing: number }>('col.4').enclosing);
});

// Air at 20 °C with its own γ would be 343.2 m/s; with that of burnt gas, √(1.33 × 287 × 293.15), by hand 334.5.
test('speed of sound from the gas’s temperature, by hand', () => {
  expect(soundSpeed(20)).toBeCloseTo(334.5, 1);
  expect(soundSpeed(600) / soundSpeed(20)).toBeCloseTo(Math.sqrt(873.15 / 293.15), 12);
});
