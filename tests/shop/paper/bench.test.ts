/** The bench sheets of every example, made both ways: looked at as all sheets are, and their figures held against the design. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cross, distance, dot, RADIANS, reject, resolveHeader, rotate, sub, unit } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design, Display } from '../../../shared/design/types';
import { headersApart } from '../../../src/shop/bench/apart';
import { type Bench, upWords } from '../../../src/shop/bench/bench';
import { bentBlocks } from '../../../src/shop/bench/bentBlocks';
import { weldedBlocks } from '../../../src/shop/bench/weldedBlocks';
import { weldOrder } from '../../../src/shop/bench/weldOrder';
import { makingOf } from '../../../src/shop/making/making';
import { rebuildMarched } from '../../../src/shop/making/welded/rebuild';
import { coverSheets } from '../../../src/shop/packet/cover';
import * as groups from '../../../src/shop/packet/groups';
import { partsOf } from '../../../src/shop/part';
import type { Block } from '../../../src/shop/sheet/flow';
import { freeBox, PAPER_NAMES, type Paper } from '../../../src/shop/sheet/paper';
import { clashesOn, lostOn, textsOf } from './looked';

const read = (name: string): Design =>
  parseDesign(readFileSync(new URL(`../../../public/examples/${name}.evenrun.json`, import.meta.url), 'utf8'));

const made = (design: Design, making: 'bent' | 'welded'): Design => ({
  ...design,
  tooling: Object.fromEntries(Object.entries(design.tooling).map(([id, tool]) => [id, { ...tool, making }])),
});

async function benchOf(design: Design): Promise<Bench> {
  const header = resolveHeader(design);
  return { header, making: await makingOf(header) };
}

const four = read('four-4-1');
/** Sawn as nominal: no gap, no shrinkage, no whole stock bends. */
const { workshop: _, ...bare } = four;
const BENCHES: readonly (readonly [string, Bench])[] = [
  ['four-4-1 welded', await benchOf(made(four, 'welded'))],
  ['four-4-1 bent', await benchOf(made(four, 'bent'))],
  ['four-4-1 without a workshop', await benchOf(made(bare, 'welded'))],
  ['four-4-2-1', await benchOf(read('four-4-2-1'))],
  ['four-4-2-1 bent', await benchOf(made(read('four-4-2-1'), 'bent'))],
  ['v8-left-bank-4-1 bent', await benchOf(made(read('v8-left-bank-4-1'), 'bent'))],
  ['v8-both-banks', await benchOf(read('v8-both-banks'))],
];

const sheetsOf = (bench: Bench, paper: Paper, display: Display) => {
  const options = { paper, paperThickness: 0.1, display } as const;
  const { runnerGroup, weldGroup, stockGroup, materialGroup, inspectionGroup, cautionGroup, coverOf } = groups;
  const all = [runnerGroup, weldGroup, stockGroup, materialGroup, inspectionGroup, cautionGroup].map((group) =>
    group(bench, options),
  );
  const contents = Array.from({ length: 11 }, (__, i) => ({
    name: `Sheets ${i}`,
    use: 'for work',
    from: i,
    to: i + 1,
  }));
  const cover = { design: 'A header', contents, problems: [], display, ...coverOf(bench, options) };
  return [...coverSheets(cover, paper), ...all.flatMap((g) => g.sheets)];
};

describe.each(BENCHES)('%s', (__, bench) => {
  const sheets = PAPER_NAMES.flatMap((paper) =>
    (['mm', 'in'] as const).flatMap((display) => sheetsOf(bench, paper, display)),
  );

  test('no words over words, nothing off the page', () => {
    const faults = sheets.flatMap((sheet) =>
      [...clashesOn(sheet), ...lostOn(sheet)].map((f) => `${sheet.title}: ${f}`),
    );
    expect(faults).toEqual([]);
  });

  test('all above the check bar', () => {
    for (const sheet of sheets) {
      const lowest = Math.max(...textsOf(sheet).flatMap(({ corners }) => corners.map(([, y]) => y)));
      expect(lowest, sheet.title).toBeLessThan(freeBox(sheet).bottom + 1);
    }
  });

  test('a page for every runner, on either paper, in either unit', () => {
    for (const { runner } of bench.header.runners) {
      const pages = sheets.filter((s) => s.title.startsWith(`Runner ${runner.id},`));
      expect(pages.length, runner.id).toBe(4);
    }
  });

  test('every weld once, in an order: joints of a runner together, flanges before collectors', () => {
    const welds = weldOrder(bench);
    expect(new Set(welds.map((w) => w.name)).size).toBe(welds.length);
    const kinds = welds.map((w) => w.kind);
    expect(kinds).toEqual([...kinds].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
    const runs = welds.filter((w) => w.kind === 'joint').map((w) => w.runner);
    expect(runs.filter((id, i) => id !== runs[i - 1])).toHaveLength(new Set(runs).size);
    // A transition is welded to its tube and to its flange.
    const transitions = [...bench.header.ports.values()].filter(({ port }) => port.transition).length;
    expect(kinds.filter((k) => k === 'start')).toHaveLength(bench.header.runners.length + transitions);
    expect(kinds.filter((k) => k === 'end')).toHaveLength(bench.header.runners.length);
  });
});

const ORDER = ['joint', 'start', 'end'];
const STEPS = { display: 'mm', tape: 0.5, dial: 0.5 } as const;
const rowsOf = (blocks: readonly Block[]) => blocks.flatMap((b) => (b.kind === 'table' ? b.rows : []));
const number = (cell: string | undefined): number => Number((cell || '0').replace('−', '-').replace('°', ''));

describe('what is printed makes the tube', () => {
  const [, bench] = BENCHES.find(([name]) => name === 'four-4-1 without a workshop')!;

  test.each(bench.making.welded.map((t) => [t.runner, t] as const))(
    '%s welded up from its page ends as far off as the page says',
    (id, tube) => {
      const part = partsOf(bench.header).parts.find((p) => p.id === id)!;
      const rows = rowsOf(weldedBlocks(bench, tube, STEPS));
      const radius = new Map(tube.pieces.map((p) => [p.id, p.radius]));
      const pieces = rows.map(([piece, , first, arc, out]) => ({
        in: number(first),
        angle: number(arc),
        radius: radius.get(piece!)!,
        out: number(out),
      }));
      const [start, ...turns] = rows.map((row) => number(row[5]));
      const line = rebuildMarched(part.resolved.start, pieces, start!, turns, part.startTrim);
      const off = distance(line.points.at(-1)!, part.line.points.at(-1)!);
      expect(off).toBeCloseTo(tube.rounded.position, 6);
      expect(off).toBeGreaterThan(0);
    },
  );

  test.each(bench.making.welded.map((t) => [t.runner, t] as const))('%s: totals are the sum of turns', (_id, tube) => {
    let sum = 0;
    for (const row of rowsOf(weldedBlocks(bench, tube, STEPS)).filter((r) => r[3])) {
      sum += number(row[5]);
      expect((((number(row[7]) - sum) % 360) + 360) % 360).toBeCloseTo(0, 9);
    }
  });

  test.each(bench.making.bent.map((t) => [t.id, t] as const))(
    '%s bent: marks from both ends and the bend between them are the sawn tube',
    (_id, tube) => {
      if (!tube.clampable.fromStart || !tube.clampable.fromEnd) return;
      const rows = rowsOf(bentBlocks(bench, tube, STEPS)).slice(0, -1);
      expect(rows.length).toBe(tube.fromStart.length - 1);
      for (const [k, row] of rows.entries()) {
        const { angle, radius } = tube.fromStart[k]!;
        const bend = (angle * Math.PI * radius) / 180;
        expect(Math.abs(number(row[5]) + bend + number(row[8]) - tube.cutLength)).toBeLessThan(0.5 + 1e-9);
      }
    },
  );
});

test('a runner in two: a page for each tube, bends counted along the runner, the weld between them on the map', async () => {
  const split = made(
    { ...four, runners: four.runners.map((r) => (r.id === 'r1' ? { ...r, splits: [3] } : r)) },
    'bent',
  );
  const bench = await benchOf(split);
  const sheets = sheetsOf(bench, 'a4', 'mm');
  const [one, two] = ['r1a', 'r1b'].map((id) => sheets.filter((s) => s.title === `Runner r1, bent: tube ${id}`));
  expect([one!.length, two!.length]).toEqual([1, 1]);
  const tube = bench.making.bent.find(({ id }) => id === 'r1b')!;
  expect(rowsOf(bentBlocks(bench, tube, STEPS)).map(([bend]) => bend)).toEqual(['3', '4', 'rest']);
  expect(weldOrder(bench)[0]).toMatchObject({ kind: 'joint', name: 'r1a | r1b' });
  expect(sheets.flatMap((sheet) => [...clashesOn(sheet), ...lostOn(sheet)])).toEqual([]);
});

test('banks that nothing joins are pictured apart, all else in one', () => {
  const banks = headersApart(BENCHES.find(([name]) => name === 'v8-both-banks')![1].header);
  expect(banks.map((b) => [...b.merges.keys()])).toEqual([['left collector'], ['right collector']]);
  expect(banks.map((b) => b.runners.length)).toEqual([4, 4]);
  expect(banks.map((b) => b.design.flanges!.length)).toEqual([1, 1]);
  const pairs = BENCHES.find(([name]) => name === 'four-4-2-1')![1].header;
  expect(headersApart(pairs)).toEqual([pairs]);
});

test('a collector’s up is told from its first inlet, where a builder can see it', () => {
  const { header } = BENCHES.find(([name]) => name === 'four-4-2-1')![1];
  const leaving = header.runners.filter(({ runner }) => 'merge' in runner.from);
  expect(leaving.map(({ runner }) => runner.id)).toEqual(['s14', 's23']);
  for (const resolved of leaving) {
    const { merge } = resolved.runner.from as { merge: string };
    const { inlets, outlet, merge: collector } = header.merges.get(merge)!;
    const [, turn, way] = /\((\d+)° (\S+) of its inlet 1/.exec(upWords(header, resolved))!;
    const out = unit(reject(sub(inlets[0]!.position, collector.position), outlet.direction));
    // Clockwise for who looks along a direction is right-handed about it.
    const up = rotate(out, outlet.direction, Number(turn) * RADIANS * (way === 'clockwise' ? 1 : -1));
    expect(dot(up, resolved.start.up)).toBeCloseTo(1, 6);
    expect(dot(cross(up, resolved.start.up), outlet.direction)).toBeCloseTo(0, 6);
  }
});

test('what is cut from one stock is told apart from its length, and a bend has its legs named', () => {
  const bench = BENCHES.find(([name]) => name === 'four-4-1 welded')![1];
  const said = groups
    .stockGroup(bench, { paper: 'a4', paperThickness: 0.1, display: 'mm' })
    .sheets.flatMap((sheet) => textsOf(sheet).map(({ text }) => text.text))
    .join(' ');
  expect(said).toContain('collector stub 3: 85.5');
  expect(said).toContain('First leg: of J the one of 80 mm');
  expect(said).toContain('the first 5.00 mm are trimmed off; a saw cut takes 1.50 mm');
});

test('a runner that begins with a straight piece: its first bend is turned from up, not from a line that there is not', async () => {
  const bench = await benchOf(made(read('four-4-2-1'), 'welded'));
  const tube = bench.making.welded.find(({ runner }) => runner === 's14')!;
  expect(tube.pieces[0]!.kind).toBe('straight');
  expect(Math.abs(tube.start.turn)).toBeGreaterThan(1);
  let sum = 0;
  const rows = rowsOf(weldedBlocks(bench, tube, STEPS)).filter((r) => r[3]);
  for (const row of rows) {
    sum += number(row[5]);
    expect((((number(row[7]) - sum) % 360) + 360) % 360).toBeCloseTo(0, 9);
  }
  expect(number(rows[0]![5])).toBeCloseTo(tube.start.turn, 0);
});
