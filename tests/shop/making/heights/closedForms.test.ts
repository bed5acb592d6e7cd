/** Check heights of tubes that can be worked out by hand: straight ones, one bend, S and U, lying flat; and the table of them. */
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../../shared/design/types';
import { readCsv } from '../../../../src/formats/csv/readCsv';
import { checkHeightsTable } from '../../../../src/shop/checkHeights';
import { checkHeights } from '../../../../src/shop/making/heights/checkHeights';
import { designOf, type Shape } from '../designs';
import { OD, partOf, RADIUS } from './tubes';

const found = (shapes: readonly Shape[], last: number) => checkHeights(partOf(designOf(shapes, last)));
const shape = (length: number, rotation: number, angle: number, radius = 60): Shape => ({
  length,
  rotation,
  angle,
  radius,
});
const flat = (count: number) =>
  ['start', ...Array.from({ length: count }, (_, i) => i + 1), 'end'].map((at) => ({
    at,
    height: expect.closeTo(0, 9),
  }));

test('a straight tube lies on its side', () => {
  const { heights, chord, span, points } = found([], 300);
  expect(heights).toEqual(flat(0));
  expect([chord, span]).toEqual([300, 300].map((x) => expect.closeTo(x, 9)));
  expect(points).toEqual(
    [
      [0, 0, RADIUS],
      [300, 0, RADIUS],
    ].map((p) => p.map((x) => expect.closeTo(x, 9))),
  );
});

test('one shorter than it is wide stands, its start down: as low either way, so the way up that has the greater y', () => {
  const { heights, chord, span } = found([], 20);
  expect(heights).toEqual([
    { at: 'start', height: 0 },
    { at: 'end', height: expect.closeTo(20, 9) },
  ]);
  expect([chord, span]).toEqual([20, 0].map((x) => expect.closeTo(x, 9)));
});

test('just shorter and just longer than it is wide', () => {
  expect(found([], OD - 0.01).span).toBeCloseTo(0, 9);
  expect(found([], OD + 0.01).span).toBeCloseTo(OD + 0.01, 9);
});

describe('flat, every height 0, chord by hand', () => {
  const planar: [string, Shape[], number, number][] = [
    ['one bend', [shape(200, 0, 90)], 100, Math.hypot(260, 160)],
    ['a bend of 1°', [shape(200, 0, 1)], 200, 2 * (200 + 60 * Math.tan(Math.PI / 360)) * Math.cos(Math.PI / 360)],
    ['U', [shape(150, 0, 180)], 100, Math.hypot(120, 50)],
    ['U of two bends', [shape(100, 0, 90), shape(50, 0, 90)], 100, 170],
    ['S', [shape(100, 0, 90), shape(40, 180, 90)], 70, Math.hypot(100 + 60 + 60 + 70, 60 + 40 + 60)],
  ];
  test.each(planar)('%s', (_, shapes, last, chord) => {
    const its = found(shapes, last);
    expect(its.heights).toEqual(flat(shapes.length));
    expect(its.chord).toBeCloseTo(chord, 9);
    expect(its.span).toBeCloseTo(chord, 9);
    for (const [, , z] of its.points) expect(z).toBeCloseTo(RADIUS, 9);
  });
});

test('a tube that begins in a step or behind a transition is measured as it is', () => {
  const design = designOf([shape(200, 0, 90)], 100);
  const flange = { id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 } as const;
  const stepped: Design = { ...design, flanges: [flange] };
  const led: Design = { ...design, ports: [{ ...design.ports[0]!, transition: { length: 30 } }] };
  expect(checkHeights(partOf(stepped)).chord).toBeCloseTo(Math.hypot(264, 160), 9);
  expect(checkHeights(partOf(led)).chord).toBeCloseTo(Math.hypot(230, 160), 9);
});

test('a bend stored as two points is measured once, at its middle', () => {
  const { heights } = found([shape(100, 0, 175), shape(80, 70, 60)], 90);
  expect(heights.map(({ at }) => at)).toEqual(['start', 1, 2, 'end']);
});

test('the table', () => {
  const text = checkHeightsTable([found([shape(200, 0, 90)], 100)]);
  const rows = readCsv(text);
  expect(rows.map(({ runner, at }) => [runner, at])).toEqual([
    ['r1', 'start'],
    ['r1', 'bend 1'],
    ['r1', 'end'],
  ]);
  for (const row of rows) {
    expect([row.chord, row.span].map(Number)).toEqual(
      [Math.hypot(260, 160), Math.hypot(260, 160)].map((x) => expect.closeTo(x, 7)),
    );
    expect(row.height).toBe('0.00000000');
  }
});
