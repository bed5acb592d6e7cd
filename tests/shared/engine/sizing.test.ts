/** Starting sizes as a whole: what is asked for is there, with its source; nonsense is refused by name; spreads are true. */
import { describe, expect, test } from 'vitest';
import { DesignError } from '../../../shared/design/refusal';
import { startFrom } from '../../../shared/engine/sizing/spread';
import {
  type Estimate,
  type Quantity,
  type SizingInput,
  startingSizes,
} from '../../../shared/engine/sizing/startingSizes';

const four: SizingInput = { cylinders: 4, bore: 82, stroke: 85, rpm: 5800 };
const named = (input: SizingInput, quantity: Quantity) => {
  const size = startingSizes(input).sizes.find((s) => s.quantity === quantity);
  if (!size) throw new Error(`no ${quantity}`);
  return size;
};

describe('what is there', () => {
  test('all into one: primary and collector', () => {
    expect(startingSizes(four).sizes.map((s) => s.quantity)).toEqual([
      'primaryLength',
      'primaryBore',
      'outletBore',
      'collectorLength',
    ]);
  });
  test('pairs first: secondaries too, and the first pipes shorter', () => {
    const pairs: SizingInput = { ...four, arrangement: 'pairs-then-one' };
    expect(startingSizes(pairs).sizes.map((s) => s.quantity)).toContain('secondaryLength');
    expect(startingSizes(pairs).sizes.map((s) => s.quantity)).toContain('secondaryBore');
    expect(named(pairs, 'primaryLength').start).toBeLessThan(named(four, 'primaryLength').start);
  });
  test('every formula has a name, words, a source and a positive result', () => {
    for (const arrangement of ['all-into-one', 'pairs-then-one'] as const)
      for (const size of startingSizes({ ...four, arrangement, portDiameter: 36 }).sizes) {
        expect(size.estimates.length).toBeGreaterThan(1);
        expect(new Set(size.estimates.map((e) => e.name)).size).toBe(size.estimates.length);
        for (const e of size.estimates) {
          expect(e.words.length * e.source.text.length).toBeGreaterThan(0);
          expect(e.mm).toBeGreaterThan(0);
          for (const { value } of e.uses) expect(value).not.toBeNaN();
        }
      }
  });
  test('one cylinder has no collector, and that is said', () => {
    const { sizes, leftOut } = startingSizes({ ...four, cylinders: 1 });
    expect(sizes.map((s) => s.quantity)).toEqual(['primaryLength', 'primaryBore']);
    expect(leftOut.map((l) => l.name)).toContain('Collector');
  });
  test('a formula that comes out at nothing is left out and named', () => {
    const { sizes, leftOut } = startingSizes({ ...four, arrangement: 'pairs-then-one', rpm: 18_000 });
    expect(leftOut.map((l) => l.name)).toContain('Secondary length: Rest of the opening-period rule');
    for (const size of sizes) for (const e of size.estimates) expect(e.mm).toBeGreaterThan(0);
  });
  test('what was not given is named as assumed', () => {
    const uses = (input: SizingInput) => named(input, 'primaryLength').estimates.flatMap((e) => e.uses);
    expect(uses(four).find((u) => u.name === 'Exhaust opens')).toMatchObject({ value: -240, assumed: true });
    const given = uses({ ...four, exhaustOpens: -232 }).find((u) => u.name === 'Exhaust opens');
    expect(given).toMatchObject({ value: -232, assumed: false });
  });
});

describe('which way sizes go', () => {
  test('faster: shorter and wider', () => {
    const fast = { ...four, rpm: 8000 };
    expect(named(fast, 'primaryLength').start).toBeLessThan(named(four, 'primaryLength').start);
    expect(named(fast, 'primaryBore').start).toBeGreaterThan(named(four, 'primaryBore').start);
  });
  test('hotter: longer', () => {
    const hot = { ...four, gasTemperature: 800 };
    expect(named(hot, 'primaryLength').start).toBeGreaterThan(named(four, 'primaryLength').start);
  });
  test('the tube that was chosen counts for what follows it', () => {
    expect(named({ ...four, primaryBore: 45 }, 'outletBore').greatest.mm).toBeCloseTo(90, 9);
  });
});

describe('spread', () => {
  const estimate = (mm: number, bearing: Estimate['bearing'] = 'size'): Estimate => ({
    name: `${mm}`,
    words: '',
    source: { text: '', confidence: 'recomputed' },
    assumes: [],
    uses: [],
    bearing,
    mm,
  });
  test('least, greatest and which', () => {
    const { least, greatest } = named(four, 'primaryLength');
    expect([least.name, greatest.name]).toEqual(['Quarter wave', 'Inertia matching']);
  });
  test('start from the middle, within the bounds', () => {
    expect(startFrom([1, 2, 9].map((mm) => estimate(mm)))).toBe(2);
    expect(startFrom([1, 2, 4, 90].map((mm) => estimate(mm)))).toBe(3);
    expect(startFrom([estimate(2), estimate(3, 'at least'), estimate(8, 'at most')])).toBe(3);
    expect(startFrom([estimate(9), estimate(3, 'at least'), estimate(8, 'at most')])).toBe(8);
    expect(startFrom([estimate(5), estimate(7, 'at least'), estimate(6, 'at most')])).toBe(7);
  });
});

describe('refused, by name', () => {
  test.each<[keyof SizingInput, unknown]>([
    ['rpm', 0],
    ['rpm', Number.NaN],
    ['bore', -82],
    ['stroke', Number.POSITIVE_INFINITY],
    ['stroke', undefined],
    ['cylinders', 2.5],
    ['cylinders', 0],
    ['exhaustOpens', 40],
    ['gasTemperature', -300],
    ['wall', 0],
    ['portDiameter', -36],
    ['topRpm', 5000],
    ['returnAfter', 0],
  ])('%s %s', (key, value) => {
    const ask = () => startingSizes({ ...four, [key]: value } as SizingInput);
    expect(ask).toThrow(DesignError);
    try {
      ask();
    } catch (error) {
      expect((error as DesignError).path).toBe(key);
    }
  });
  test('pairs of three cylinders, pairs of two', () => {
    for (const cylinders of [2, 3])
      expect(() => startingSizes({ ...four, cylinders, arrangement: 'pairs-then-one' })).toThrow(
        /arrangement: found "pairs-then-one" with/,
      );
  });
  test('all at once', () => {
    expect(() => startingSizes({ cylinders: 0, bore: -1, stroke: 0, rpm: 0 })).toThrow(/and 3 more/);
  });
});
