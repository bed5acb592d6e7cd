/** The header's picture: what stands in front hides what is behind, and nothing hides itself. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { resolveHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Vec3 } from '../../../shared/vec3';
import { hidingOf } from '../../../src/shop/bench/picture/bodies';
import { headerPicture, nameMarks } from '../../../src/shop/bench/picture/headerPicture';
import { headerLines } from '../../../src/shop/bench/picture/lines';
import { viewFrom } from '../../../src/shop/bench/picture/view';
import { visibleLength, visibleRuns } from '../../../src/shop/bench/picture/visible';

const rod = { from: [-100, 0, 0], to: [100, 0, 0], radius: 20 } as const;
const isHidden = hidingOf({ rods: [rod], faces: [] });

test('a tube hides what lies behind it, as wide as it is, and nothing before it', () => {
  const across = (z: number): Vec3[] => [
    [0, -50, z],
    [0, 50, z],
  ];
  // 100 mm of line, less the tube's 40, which are taken 4 % narrower.
  expect(visibleLength([across(-60)], isHidden, 0.1)).toBeCloseTo(100 - 0.96 * 40, 0);
  expect(visibleLength([across(60)], isHidden, 0.1)).toBeCloseTo(100, 6);
  expect(visibleRuns([across(-60)], isHidden, 0.1)).toHaveLength(2);
  expect(visibleRuns([across(60)], isHidden, 0.1)).toEqual([
    [
      [0, -50],
      [0, 50],
    ],
  ]);
});

test('past its end a tube hides nothing, and its own edges are seen', () => {
  expect(isHidden([101, 0, -60])).toBe(false);
  expect(isHidden([99, 0, -60])).toBe(true);
  expect(isHidden([0, 20, 0])).toBe(false);
});

test('a plate hides within its outline only, and is no plate on edge', () => {
  const square = [-10, 10].flatMap((a) => [[a, -a] as const, [a, a] as const]);
  const edges = square.map((from, i) => ({ from, to: square[(i + 1) % 4]!, arc: null }));
  const face = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], normal: [0, 0, 1], edges } as const;
  const behind = hidingOf({ rods: [], faces: [face] });
  expect(behind([0, 0, -5])).toBe(true);
  expect(behind([0, 0, 5])).toBe(false);
  expect(behind([11, 0, -5])).toBe(false);
  const onEdge = hidingOf({ rods: [], faces: [{ ...face, x: [0, 0, 1], normal: [1, 0, 0] }] });
  expect(onEdge([0, 0, -5])).toBe(false);
});

const EXAMPLE = new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url);
const header = resolveHeader(parseDesign(readFileSync(EXAMPLE, 'utf8')));

test('of a header some is hidden and most is seen, every name finds its place, all within the room', () => {
  const { lines, bodies } = headerLines(header, viewFrom(67.5, 25));
  const all = visibleLength(lines, () => false, 5);
  const seen = visibleLength(lines, hidingOf(bodies), 5);
  expect(seen / all).toBeGreaterThan(0.4);
  expect(seen / all).toBeLessThan(0.9);
  const picture = headerPicture(header, { width: 190, height: 100 }, nameMarks(header))!;
  expect(picture.left).toEqual([]);
  const points = picture.items.flatMap((i) => (i.kind === 'curve' ? i.vertices : []));
  expect(Math.min(...points.map((p) => p[0]))).toBeGreaterThan(0);
  expect(Math.max(...points.map((p) => p[0]))).toBeLessThan(190);
  expect(Math.max(...points.map((p) => p[1]))).toBeLessThan(100);
});

test('nothing is drawn where there is nothing yet', () => {
  const bare = resolveHeader({ ...header.design, runners: [], merges: [], flanges: [] });
  expect(headerPicture(bare, { width: 190, height: 100 }, [])).toBeNull();
});
