/** `make`: both ways, what stops one with its numbers, the design written as asked for. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Design, Workshop } from '../../shared/design/types';
import type { Making } from '../../src/shop/making/report';
import { type Bench, bench, GOOD, UNROUTED } from './bench';

let b: Bench;
beforeEach(() => {
  b = bench();
});
afterEach(() => b.clear());

const read = (name: string): Design => JSON.parse(readFileSync(join(b.folder, name), 'utf8'));
function withWorkshop(workshop: Workshop, change: (design: Design) => Design = (d) => d): string {
  writeFileSync(join(b.folder, 'shelf.json'), JSON.stringify(change({ ...read(GOOD), workshop })));
  return 'shelf.json';
}
const tubeOf = (design: Design) => design.tubes[design.runners[0]!.tube]!;

describe('make', () => {
  test('both ways side by side, pieces, what to buy, and the bill', async () => {
    const { code, out, err } = await b.evenrun('make', GOOD);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^Both ways of making$/m);
    expect(out).toMatch(/^ +\S+ +welded up +chosen/m);
    expect(out).toMatch(/^ +bent /m);
    expect(out).toMatch(/^r1, welded up of \d+/m);
    expect(out).toMatch(/assumed to be on sale/);
    expect(out).toMatch(/^Bill of materials$/m);
    expect(out).toMatch(/^Mass \d+\.\d{3} kg/m);
  });

  test('as JSON, each piece in its stock once', async () => {
    const { code, out } = await b.evenrun('make', GOOD, '--json');
    expect(code).toBe(0);
    const making = JSON.parse(out) as Making;
    const pieces = making.welded.flatMap((tube) => tube.pieces.map(({ id }) => id));
    const cut = making.plan.parts.flatMap(({ used }) => used.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)));
    expect(cut.filter((id) => pieces.includes(id)).sort()).toEqual(pieces.sort());
  });

  test('another way for all tubes, written where asked', async () => {
    const before = read(GOOD);
    const { out } = await b.evenrun('make', GOOD, '--way', 'bent', '-o', 'bent.json');
    expect(out).toMatch(/^Written to bent\.json$/m);
    expect(Object.values(read('bent.json').tooling).map(({ making }) => making)).toEqual(
      Object.keys(before.tooling).map(() => 'bent'),
    );
    expect(read(GOOD)).toEqual(before);
  });

  test('the workshop of another design', async () => {
    const shelf = withWorkshop({ kerf: 2.25, currency: 'EUR' });
    expect((await b.evenrun('make', GOOD, '--workshop', shelf, '-o', 'with.json')).code).toBe(0);
    expect(read('with.json').workshop).toEqual({ kerf: 2.25, currency: 'EUR' });
  });

  test('what cannot be used is refused in one line, and nothing is written', async () => {
    for (const [args, words] of [
      [[GOOD, '--way', 'cast'], /--way: found "cast"; allowed: welded or bent/],
      [[GOOD, '--way', 'bent', '--tube', 'nosuch'], /--tube: found "nosuch"; allowed: /],
      [[GOOD, '--tube', 'primary'], /--tube: found "primary" without a way/],
      [[GOOD, '--workshop', UNROUTED], /workshop: found nothing; allowed: a design that has a workshop/],
      [['nowhere.json'], /nowhere\.json/],
    ] as const) {
      const { code, out, err } = await b.evenrun('make', ...args, '-o', 'out.json');
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(words);
      expect(err.trim().split('\n')).toHaveLength(1);
    }
    expect(b.listing()).not.toContain('out.json');
  });
});

describe('what is missing or cannot be meant', () => {
  test('a runner that is not routed is in no plan, and that stops', async () => {
    const design = read(GOOD);
    const { points: _, ...bare } = design.runners[0]!;
    writeFileSync(
      join(b.folder, 'bare.json'),
      JSON.stringify({ ...design, runners: [bare, ...design.runners.slice(1)] }),
    );
    const { code, out } = await b.evenrun('make', 'bare.json');
    expect(code).toBe(1);
    expect(out).toMatch(/r1 is in no plan, because it is not routed yet; give it points\./);
  });

  test('a price that nothing is called by', async () => {
    const { code, out } = await b.evenrun('make', withWorkshop({ prices: { nuts: 3 } }));
    expect(code).toBe(0);
    expect(out).toMatch(/Nothing to be priced is called "nuts"/);
    expect(out).toMatch(/at workshop\/prices\/nuts/);
  });

  test('test bends too near each other to tell beyond them', async () => {
    const testBends: [number, number][] = [
      [45, 43.4],
      [45.001, 43.401],
      [90, 43.402],
    ];
    const shelf = withWorkshop({}, (d) => ({
      ...d,
      tooling: Object.fromEntries(
        Object.entries(d.tooling).map(([n, t]) => [n, { ...t, making: 'bent' as const, bender: { testBends } }]),
      ),
    }));
    const { code, out } = await b.evenrun('make', shelf);
    expect(code).toBe(1);
    expect(out).toMatch(/no tube springs back by/);
    expect(out).toMatch(/testBends/);
  });

  test('an end trim that leaves nothing of a bar is told once, at its own place', async () => {
    const { code, out } = await b.evenrun('make', withWorkshop({ endTrim: 5000 }));
    expect(code).toBe(1);
    expect(out).toMatch(/5000 mm is trimmed off both ends of a bar/);
    expect(out).toMatch(/at workshop\/endTrim/);
    expect(out).not.toMatch(/more than the longest bar/);
  });
});

describe('a shelf that does not do', () => {
  test('negative stock', async () => {
    const shelf = withWorkshop({ bars: [{ id: 'bar', ...tubeOf(read(GOOD)), length: -6000 }] });
    const { code, err } = await b.evenrun('make', shelf);
    expect(code).toBe(2);
    expect(err).toMatch(/workshop\/bars\/bar\/length: found -6000; allowed: a number above 0/);
  });

  test('a piece longer than any bar', async () => {
    const shelf = withWorkshop({ bars: [{ id: 'short', ...tubeOf(read(GOOD)), length: 120 }] }, (d) => ({
      ...d,
      tooling: Object.fromEntries(Object.entries(d.tooling).map(([n, t]) => [n, { ...t, making: 'bent' as const }])),
    }));
    const { code, out } = await b.evenrun('make', shelf);
    expect(code).toBe(1);
    expect(out).toMatch(/^It cannot be made as it stands$/m);
    expect(out).toMatch(/more than the longest bar of .* of 120; list a bar of at least \d/);
    expect(out).toMatch(/at workshop\/bars/);
  });

  test('no stock bend of the radius: which there are', async () => {
    const tube = tubeOf(read(GOOD));
    const shelf = withWorkshop({ bends: [{ id: 'wide', ...tube, radius: 150, angle: 180, legs: [90, 90] }] });
    const { code, out } = await b.evenrun('make', shelf);
    expect(code).toBe(1);
    expect(out).toMatch(/150 mm/);
    expect(out).toMatch(/at workshop\/bends/);
  });

  test('a kerf larger than a piece', async () => {
    const { code, out } = await b.evenrun('make', withWorkshop({ kerf: 60 }));
    expect(code).toBe(1);
    expect(out).toMatch(/kerf/);
    expect(out).toMatch(/60 mm/);
  });

  test('a clamp longer than every straight', async () => {
    const shelf = withWorkshop({}, (d) => ({
      ...d,
      tooling: Object.fromEntries(
        Object.entries(d.tooling).map(([n, t]) => [n, { ...t, making: 'bent' as const, bender: { clamp: 900 } }]),
      ),
    }));
    const { code, out } = await b.evenrun('make', shelf);
    expect(code).toBe(1);
    expect(out).toMatch(/900 mm/);
  });
});
