/** Flange drawings: the table says what the plan holds, the view is to its scale, the tiles are the plate at true size. mm. */
import { expect, test } from 'vitest';
import { circleLoop, flangePlan } from '../../../geometry';
import type { Curve, Item, Point } from '../../../src/formats/drawing/drawing';
import { holeWords } from '../../../src/shop/flange/table';
import { type FlangeSheetPlan, flangeSheets } from '../../../src/shop/flangeSheet';
import { flangeSheetPlans } from '../../../src/shop/flangeSheetPlans';
import { OVERLAP } from '../../../src/shop/sheet/tiles';
import { headerOf, PAIRED, ROW } from '../../geometry/flange/flanges';
import { PLAN } from './flangePlan';

const MM = { paper: 'a4', display: 'mm' } as const;

/** Curves of that name, where they lie in the outermost frame. */
function curvesIn(items: readonly Item[], name: string, [dx, dy]: Point = [0, 0]): Curve[] {
  return items.flatMap((item) => {
    if (item.kind === 'group') return curvesIn(item.items, name, [dx + item.move[0], dy + item.move[1]]);
    if (item.kind !== 'curve' || item.name !== name) return [];
    return [{ ...item, vertices: item.vertices.map(([x, y, b]) => [x + dx, y + dy, b] as const) }];
  });
}
const textsIn = (items: readonly Item[]): string[] =>
  items.flatMap((i) => (i.kind === 'group' ? textsIn(i.items) : i.kind === 'text' ? [i.text] : []));

/** Of a circle drawn as two halves. */
const centreOf = ({ vertices: [a, b] }: Curve): Point => [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2];
const radiusOf = ({ vertices: [a, b] }: Curve): number => Math.hypot(a![0] - b![0], a![1] - b![1]) / 2;

const inOrder = [...PLAN.holes].sort((a, b) => a.at[0] - b.at[0]);

test.each([
  ['overview, 1 : 2', 0, 2],
  ['first tile, true size', 1, 1],
  ['second tile, true size', 2, 1],
])('%s: every hole where and as large as the plan has it', (_, sheet, scale) => {
  const { items } = flangeSheets(PLAN, MM)[sheet]!;
  const holes = curvesIn(items, 'hole');
  expect(holes).toHaveLength(PLAN.holes.length);
  const [x0, y0] = centreOf(holes[0]!);
  for (const [i, hole] of holes.entries()) {
    const [x, y] = centreOf(hole);
    expect((x - x0) * scale).toBeCloseTo(inOrder[i]!.at[0] - inOrder[0]!.at[0], 9);
    expect((y0 - y) * scale).toBeCloseTo(inOrder[i]!.at[1] - inOrder[0]!.at[1], 9);
    expect(radiusOf(hole) * 2 * scale).toBeCloseTo(inOrder[i]!.diameter, 9);
  }
});

test('the tiles’ windows overlap and cover the plate, and their marks fall together', () => {
  const [, first, second] = flangeSheets(PLAN, MM);
  const windows = [first!, second!].map(({ items }) => {
    const group = items.find((i) => i.kind === 'group' && i.clip);
    if (group?.kind !== 'group') throw new Error('no clipped group');
    return { left: group.clip!.left - group.move[0], right: group.clip!.right - group.move[0] };
  });
  expect(windows[0]!.left).toBeLessThan(0);
  expect(windows[1]!.right).toBeGreaterThan(414);
  expect(windows[0]!.right - windows[1]!.left).toBeCloseTo(OVERLAP, 9);
});

test('the table: places from the leftmost hole, sizes, and whose ISO 273 class', () => {
  const words = textsIn(flangeSheets(PLAN, MM)[0]!.items);
  for (const word of [
    '74.00',
    '56.00',
    '367.00',
    '9.40',
    'M8x1.25, medium',
    'M8x1.25, not ISO 273',
    'Ø 35.00',
    '4.00 deep',
  ])
    expect(words).toContain(word);
  // Overall.
  expect(words).toContain('414.00');
  expect(words).toContain('84.00');
  expect(words.join(' ')).toMatch(/Bolt down .* while welding/);
});

test.each([
  ['M6', 6.4, 'M6, fine'],
  ['M10x1.5', 12, 'M10x1.5, coarse'],
  ['M8', 9.2, 'M8, not ISO 273'],
  ['3/8-16', 10, '3/8-16'],
  [undefined, 10, ''],
])('%s in %d: "%s"', (thread, diameter, words) => {
  expect(holeWords({ diameter, ...(thread !== undefined && { thread }) })).toBe(words);
});

test('more holes than a sheet has rows go on sheets of their own, none lost', () => {
  const many: FlangeSheetPlan = {
    ...PLAN,
    holes: Array.from({ length: 60 }, (_, i) => ({ at: [5 * i, 0], diameter: 3 })),
  };
  const sheets = flangeSheets(many, MM);
  const numbers = sheets.filter((s) => s.title.endsWith(', table')).flatMap((s) => textsIn(s.items));
  for (let i = 1; i <= 60; i++) expect(numbers).toContain(String(i));
});

test('a small plate is drawn true size at once, and one without holes too', () => {
  const small: FlangeSheetPlan = {
    ...PLAN,
    outline: circleLoop([0, 0], 30),
    openings: [{ loop: circleLoop([0, 0], 20), label: 'outlet' }],
    steps: [],
    holes: [],
  };
  expect(flangeSheets(small, MM).map((s) => s.scale)).toEqual(['TRUE SIZE 1 : 1', 'TRUE SIZE 1 : 1']);
});

/** Rows of the table of holes on a flange's first sheet: number, X, Y, from texts in the order that they are drawn. */
function rowsOf(plan: FlangeSheetPlan): string[][] {
  const words = textsIn(flangeSheets(plan, MM)[0]!.items);
  const head = words.indexOf('for, ISO 273 class') + 1;
  return plan.holes.map((_, i) => words.slice(head + 5 * i, head + 5 * (i + 1)));
}

test('holes have their fasteners’ numbers, the datum is the leftmost and is named, and so is the end of port 1', () => {
  const [plan] = flangeSheetPlans(headerOf(PAIRED));
  // Studs run along the design's +x, so on the plate the last is leftmost.
  expect(rowsOf(plan!).map(([number, x]) => [number, x])).toEqual([
    ['1', '186.00'],
    ['2', '110.00'],
    ['3', '76.00'],
    ['4', '0.00'],
  ]);
  const words = textsIn(flangeSheets(plan!, MM)[0]!.items).join(' ');
  expect(words).toMatch(/X and Y count from the middle of hole 4, the leftmost\./);
  expect(words).toMatch(/Messages and the DXF count from the middle of port p1 \(A, at the right\)\./);
});

test('a separate plate lists its own holes, halves as halves, and draws no circle for them', () => {
  const header = headerOf({ ...ROW, flange: { plates: 'separate' } });
  const [first, middle] = flangeSheetPlans(header);
  expect(rowsOf(first!).map(([number, , , , what]) => [number, what])).toEqual([
    ['1', 'M8, medium'],
    ['2', 'M8, medium'],
    ['3', 'M8, medium, half'],
    ['4', 'M8, medium, half'],
  ]);
  expect(curvesIn(flangeSheets(first!, MM)[0]!.items, 'hole')).toHaveLength(2);
  const words = textsIn(flangeSheets(middle!, MM)[0]!.items).join(' ');
  expect(words).toMatch(/count from the middle of opening A\./);
  expect(words).toMatch(
    /Messages count from the middle of port p2 \(A\); the DXF, with all plates in it, from that of port p1\./,
  );
  expect(flangePlan(header, header.design.flanges![0]!).plates).toHaveLength(3);
});

test('every sheet of a plate shows which way is up', () => {
  for (const { items, title } of flangeSheets(PLAN, MM)) {
    const flat = (all: readonly Item[]): Item[] => all.flatMap((i) => (i.kind === 'group' ? flat(i.items) : [i]));
    expect(flat(items).filter((i) => i.kind === 'text' && i.text === 'UP').length, title).toBeGreaterThan(0);
  }
});
