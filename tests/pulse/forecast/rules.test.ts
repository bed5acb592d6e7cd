/** Rules of thumb on a map: each held against its published or recomputed value (sizing.json has source and confidence). mm, rpm. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import type { SizingInput } from '../../../shared/engine/sizing/startingSizes';
import { MM_PER_INCH } from '../../../shared/units';
import { type MapRule, rulesFor, rulesOnMap } from '../../../src/pulse/forecast/rules';
import { example } from '../path/designs';

const { values } = JSON.parse(readFileSync(new URL('../../reference/sizing.json', import.meta.url), 'utf8')) as {
  values: Record<string, { value: unknown }>;
};
const published = <T>(key: string): T => values[key]!.value as T;

const INPUT: Omit<SizingInput, 'rpm'> = { cylinders: 4, bore: 86, stroke: 86 };
const rule = (rules: readonly MapRule[], name: string): MapRule => rules.find((one) => one.name === name)!;
/** The reference has six digits. */
const near = (found: number, wanted: number) => expect(Math.abs(found / wanted - 1)).toBeLessThan(5e-6);
/** mm, of a cylinder as high as wide that holds so much. */
const square = (mm3: number): number => Math.cbrt((4 * mm3) / Math.PI);

describe('opening-period rule (rule.imperial_length; handbook, read in source, recomputed)', () => {
  const rows = published<{ EVO: number; N: number; P_mm: number }[]>('rule.imperial_length');
  test.each(rows)('opens $EVO before the bottom, $N rpm', ({ EVO, N, P_mm }) => {
    const found = rule(rulesFor({ ...INPUT, exhaustOpens: -180 - EVO }, [N, N]), 'Opening-period rule');
    near(found.from, P_mm);
    near(found.to, P_mm);
    expect(found).toMatchObject({ kind: 'length', spread: { share: 0.1 }, source: { confidence: 'read-in-source' } });
  });
});

describe('bore for length (rule.imperial_id; handbook, from memory, recomputed)', () => {
  const rows = published<{ cc: number; P: number; ID_mm: number }[]>('rule.imperial_id');
  test.each(rows)('$cc cc, $P in: a point of the map', ({ cc, P, ID_mm }) => {
    // The speed at which the handbook's own length is P.
    const rpm = (850 * 250) / (P + 3);
    const side = square(cc * 1000);
    const found = rule(
      rulesFor({ ...INPUT, bore: side, stroke: side, exhaustOpens: -250 }, [rpm, rpm]),
      'Bore for length',
    );
    expect(found).toMatchObject({ kind: 'point', spread: { share: 0.05 } });
    near(found.along[0]!.bore!, ID_mm);
    near(found.along[0]!.length!, P * MM_PER_INCH);
    near(found.from, P * MM_PER_INCH);
  });
});

describe('torque-peak area (rule.88200; magazine, read in source, recomputed)', () => {
  const rows = published<{ V_in3: number; N: number; id_in: number }[]>('rule.88200');
  test.each(rows)('$V_in3 cubic inches, $N rpm', ({ V_in3, N, id_in }) => {
    const side = square(V_in3 * MM_PER_INCH ** 3);
    near(rule(rulesFor({ ...INPUT, bore: side, stroke: side }, [N, N]), 'Torque-peak area').from, id_in * MM_PER_INCH);
  });
});

test('out and back (rule.wave; geometry, recomputed)', () => {
  const { c, theta, N, L } = published<{ c: number; theta: number; N: number; L: number }>('rule.wave');
  // The gas in which sound is so fast, °C: c = √(1.33 × 287 × T).
  const gasTemperature = (c * c) / (1.33 * 287) - 273.15;
  near(rule(rulesFor({ ...INPUT, gasTemperature, returnAfter: theta }, [N, N]), 'Out and back').from, 1000 * L);
});

describe('over a band', () => {
  const rules = rulesFor(INPUT, [4000, 7000]);

  test('tuning for more speed asks for shorter and wider primaries', () => {
    for (const { kind, along, name, from, to } of rules) {
      if (name === 'Mean gas speed') continue;
      const lengths = along.flatMap(({ length }) => length ?? []);
      const bores = along.flatMap(({ bore }) => bore ?? []);
      expect(lengths.length + bores.length, name).toBeGreaterThan(0);
      expect(lengths, name).toEqual([...lengths].sort((a, b) => b - a));
      expect(bores, name).toEqual([...bores].sort((a, b) => a - b));
      expect([from, to], name).toEqual(kind === 'bore' ? [bores[0], bores.at(-1)] : [lengths.at(-1), lengths[0]]);
    }
  });

  test('they differ far more than any of them says of itself', () => {
    const lengths = rules.filter(({ kind }) => kind === 'length').map(({ from, to }) => (from + to) / 2);
    expect(Math.max(...lengths) / Math.min(...lengths)).toBeGreaterThan(1.5);
  });

  test('what nobody gave is told', () => {
    expect(rule(rules, 'Out and back').assumed).toEqual(['Pulse to return 120 °', 'Gas in the primary 600 °C']);
    expect(rule(rules, 'Opening-period rule').assumed).toEqual(['Exhaust opens 60° before the bottom']);
  });

  test('every rule names its source; mean gas speed goes by the highest speed alone', () => {
    for (const { source, words } of rules) expect(source.text.length * words.length).toBeGreaterThan(0);
    const { from, to } = rule(rules, 'Mean gas speed');
    expect(to).toBe(from);
  });

  test('a band upside down is a caller’s mistake', () => {
    expect(() => rulesFor(INPUT, [7000, 4000])).toThrow(RangeError);
  });
});

describe('of a design', () => {
  test('its engine, valves, port and bore are taken', () => {
    const rules = rulesOnMap(example('four-4-1'), [4000, 7000]);
    expect(rule(rules, 'Opening-period rule').assumed).toEqual([]);
    // Port of 37 mm and an eighth of an inch.
    expect(rule(rules, 'Port and an eighth')).toMatchObject({ kind: 'bore', bearing: 'at least', from: 40.175 });
    expect(rule(rules, 'Port and an eighth').spread).toBeNull();
  });

  test('pairs first: first pipes whatever the speed, and no point for bore and length', () => {
    const rules = rulesOnMap(example('four-4-2-1'), [3000, 6000]);
    expect(rule(rules, 'First pipes of fifteen inches')).toMatchObject({ from: 381, to: 381 });
    expect(rule(rules, 'Bore for length').kind).toBe('bore');
    const other = rulesOnMap(example('four-4-2-1'), [3000, 6000], 'all-into-one');
    expect(rule(other, 'Bore for length').kind).toBe('point');
  });

  test('without bore and stroke nothing can be said: refused by place', () => {
    const { bore: _, stroke: __, ...engine } = example('four-4-1').engine!;
    expect(() => rulesOnMap({ ...example('four-4-1'), engine }, [4000, 7000])).toThrow(DesignError);
    expect(() => rulesOnMap({ ...example('four-4-1'), engine }, [4000, 7000])).toThrow(/^engine\/bore.*1 more/);
  });
});
