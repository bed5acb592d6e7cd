/** `size`: from a design or from options, in either unit, with sources in sight; bad input is refused by the option's name. */
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bench, bench } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
  copyFileSync('public/examples/four-4-2-1.evenrun.json', join(b.folder, 'pairs.json'));
});
afterEach(() => b.clear());

const FOUR = ['--bore', '82', '--stroke', '85', '--cylinders', '4', '--rpm', '5800'];
type Size = { quantity: string; start: number; least: { mm: number }; greatest: { mm: number }; estimates: object[] };
const sizesOf = (out: string): Map<string, Size> => new Map(JSON.parse(out).sizes.map((s: Size) => [s.quantity, s]));

describe('what is asked for', () => {
  test('by options: a table, then every formula with its source', async () => {
    const { code, out, err } = await b.evenrun('size', ...FOUR);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Starting sizes, 4 cylinders, 82\.0 × 85\.0 mm, tuned for 5800 rpm$/m);
    expect(out).toMatch(/^ {2}Primary length +\d+\.\d +\d+\.\d +\d+\.\d +valve seat to collector; least by/m);
    expect(out).toMatch(/^ {2}Opening-period rule: \d+\.\d mm$/m);
    expect(out.match(/^ {4}source {3}/gm)?.length).toBeGreaterThan(8);
    expect(out).toMatch(/exhaust opens 60° before the bottom \(assumed\)/);
    expect(out).toMatch(/Places to start from, no more/);
  });

  test('from a design: its engine, its pairs, its tube', async () => {
    const { code, out } = await b.evenrun('size', 'pairs.json', '--json');
    expect(code).toBe(0);
    const design = JSON.parse(readFileSync(join(b.folder, 'pairs.json'), 'utf8'));
    const tube = Object.values<{ outsideDiameter: number; wall: number }>(design.tubes)[0]!;
    expect(JSON.parse(out).input).toMatchObject({
      cylinders: 4,
      arrangement: 'pairs-then-one',
      bore: design.engine.bore,
      topRpm: design.engine.rpm[1],
      wall: tube.wall,
    });
    expect([...sizesOf(out).keys()]).toContain('secondaryLength');
  });

  test('options outrank the design', async () => {
    const { out } = await b.evenrun('size', 'pairs.json', '--rpm', '6000', '--arrangement', 'all-into-one', '--json');
    expect(JSON.parse(out).input).toMatchObject({ rpm: 6000, arrangement: 'all-into-one' });
    expect([...sizesOf(out).keys()]).not.toContain('secondaryLength');
  });

  test('inches in are the millimetres they stand for', async () => {
    const inches = await b.evenrun('size', '--bore', '3 1/2 in', '--stroke', '3.25"', ...FOUR.slice(4), '--json');
    const mm = await b.evenrun('size', '--bore', '88.9', '--stroke', '82.55', ...FOUR.slice(4), '--json');
    expect(inches.code).toBe(0);
    const [a, c] = [sizesOf(inches.out), sizesOf(mm.out)];
    for (const [quantity, size] of a) expect(size.start).toBeCloseTo(c.get(quantity)!.start, 9);
    const bare = await b.evenrun('size', '--bore', '3 1/2', '--stroke', '3.25', ...FOUR.slice(4), '--unit', 'in');
    expect(bare.out).toMatch(/4 cylinders, 3\.500 × 3\.250 in/);
  });

  test('a spread is what the formulas say', async () => {
    const { out } = await b.evenrun('size', ...FOUR, '--json');
    for (const { least, greatest, estimates, start } of sizesOf(out).values()) {
      const all = (estimates as { mm: number }[]).map((e) => e.mm);
      expect([least.mm, greatest.mm]).toEqual([Math.min(...all), Math.max(...all)]);
      expect(start).toBeGreaterThanOrEqual(least.mm);
      expect(start).toBeLessThanOrEqual(greatest.mm);
    }
  });
});

describe('refused', () => {
  async function refused(args: string[], message: RegExp) {
    const { code, out, err } = await b.evenrun('size', ...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(/^evenrun: [^\n]+\n$/);
    expect(err).toMatch(message);
  }
  const but = (flag: string, value: string) => [...FOUR, flag, value];

  test('nothing', () => refused([], /--bore, --stroke, --cylinders, --rpm needed: no design is given/));
  test('no speed', () => refused(FOUR.slice(0, 6), /--rpm needed/));
  test('a standing engine', () => refused(but('--rpm', '0'), /--rpm: found 0; allowed: a number from 300/));
  test('a negative bore', () => refused(but('--bore', '-82'), /--bore: found -82; allowed: a number from 20/));
  test('words', () => refused(but('--bore', 'wide'), /--bore: found "wide": /));
  test('another unit', () => refused(but('--unit', 'furlong'), /--unit: found "furlong"; allowed: mm, in/));
  test('half a cylinder', () => refused(but('--cylinders', '2.5'), /--cylinders: found 2.5; allowed: a whole number/));
  test('an option by its own spelling', () =>
    refused(but('--exhaust-opens', '40'), /--exhaust-opens: found 40; allowed/));
  test('pairs of three', () =>
    refused([...but('--cylinders', '3'), '--arrangement', 'pairs-then-one'], /--arrangement: found "pairs-then-one"/));
  test('an arrangement unknown', () =>
    refused(but('--arrangement', 'star'), /--arrangement: found "star"; allowed: all/));
  test('a design without an engine', async () => {
    const design = JSON.parse(readFileSync(join(b.folder, 'pairs.json'), 'utf8'));
    delete design.engine;
    writeFileSync(join(b.folder, 'bare.json'), JSON.stringify(design));
    await refused(['bare.json'], /--bore, --stroke, --rpm needed: bare\.json does not say it under engine/);
  });
  test('a design that is not there', () => refused(['none.json'], /none\.json: no such file/));
});
