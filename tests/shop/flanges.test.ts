/** What of a flange is drawn, on which layer, and where separate plates lie. mm. */
import { expect, test } from 'vitest';
import { edges, flangePlan, isInLoop, leastGap, loopBounds } from '../../geometry';
import { flangeCurves } from '../../src/shop/flanges';
import { type Asked, headerOf, PAIRED, ROW } from '../geometry/flange/flanges';

const curvesOf = (asked: Asked) => {
  const header = headerOf(asked);
  return flangeCurves(flangePlan(header, header.design.flanges![0]!));
};
const count = (asked: Asked, layer: string) => curvesOf(asked).filter((c) => c.layer === layer).length;

test('a layer for each kind', () => {
  const kinds = ['OUTLINE', 'PORTS', 'HOLES', 'ETCH'];
  expect(kinds.map((layer) => count(ROW, layer))).toEqual([1, 3, 8, 0]);
  expect(kinds.map((layer) => count({ ...ROW, flange: { seat: 'stepped' } }, layer))).toEqual([1, 3, 8, 3]);
  // Four of the eight holes are shared: bites out of outlines, no closed curves.
  expect(kinds.map((layer) => count({ ...ROW, flange: { plates: 'separate' } }, layer))).toEqual([3, 3, 4, 0]);
});

test.each([
  ['as they bolt on', { ...ROW, flange: { plates: 'separate' } } as Asked],
  ['their ports fanned so far that plates would lie on each other', { ...PAIRED, pitch: 60, studs: [], port: (k: number) => ({ direction: [k - 0.5, 1, 0] }), flange: { plates: 'separate' } } as Asked],
])('separate plates beside each other, none on another: %s', (_, asked) => {
  const outlines = curvesOf(asked).filter((c) => c.layer === 'OUTLINE').map((c) => edges(c.loop)); // biome-ignore format: one line
  for (const [k, a] of outlines.entries())
    for (const b of outlines.slice(k + 1)) {
      expect(leastGap(a, b).gap).toBeGreaterThan(0.9);
      expect(isInLoop(a[0]!.from, b) || isInLoop(b[0]!.from, a)).toBe(false);
    }
}); // biome-ignore format: one line a case

test('the middle plate lies where its port does', () => {
  const openings = curvesOf({ ...ROW, flange: { plates: 'separate' } }).filter((c) => c.layer === 'PORTS');
  const middles = openings.map(({ loop }) => (loopBounds(loop).min[0] + loopBounds(loop).max[0]) / 2);
  expect(middles.map((x) => Math.round(x * 1e6) / 1e6 + 0)).toEqual([0, -90, -180]);
});
