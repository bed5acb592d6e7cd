/** Meetings, gaps, insides and self-crossings of edges, against sampled points. */
import { describe, expect, test } from 'vitest';
import {
  circleLoop,
  cutLoop,
  edgeGap,
  edges,
  isInLoop,
  type Loop,
  leastGap,
  loopArea,
  meetings,
  type Point2,
  pointOnEdge,
  polygonLoop,
  selfCrossing,
} from '../../../geometry';
import { random } from '../../random';

const square = polygonLoop([[0, 0], [10, 0], [10, 10], [0, 10]]); // biome-ignore format: one line

test.each([1, 2, 3, 4])('of random edges, meetings lie on both and gaps are what sampling finds, seed %i', (seed) => {
  const draw = random(seed);
  const place = (): Point2 => [draw.between(-10, 10), draw.between(-10, 10)];
  const edge = () => edges([[...place(), draw() < 0.3 ? 0 : draw.between(-2, 2)], [...place(), 0]])[0]!; // biome-ignore format: one line
  let met = 0;
  for (let round = 0; round < 100; round++) {
    const [a, b] = [edge(), edge()];
    for (const { at, s, t } of meetings(a, b)) {
      met++;
      for (const [e, share] of [
        [a, s],
        [b, t],
      ] as const) {
        // biome-ignore format: one line
        const [x, y] = pointOnEdge(e, share);
        expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1e-6);
      }
    }
    let least = Number.POSITIVE_INFINITY;
    const along = Array.from({ length: 101 }, (_, k) => k / 100);
    for (const s of along) {
      const [x, y] = pointOnEdge(a, s);
      for (const t of along) {
        const [u, v] = pointOnEdge(b, t);
        least = Math.min(least, Math.hypot(x - u, y - v));
      }
    }
    const { gap } = edgeGap(a, b);
    expect(gap).toBeLessThanOrEqual(least + 1e-9);
    expect(gap).toBeGreaterThan(least - 0.8);
  }
  expect(met).toBeGreaterThan(15);
});

test('gaps in closed form', () => {
  expect(leastGap(edges(circleLoop([0, 0], 3)), edges(circleLoop([10, 0], 4))).gap).toBeCloseTo(3, 12);
  expect(leastGap(edges(circleLoop([5, 5], 2)), edges(square)).gap).toBeCloseTo(3, 12);
  expect(leastGap(edges(circleLoop([0, 0], 3)), edges(circleLoop([1, 0], 7))).gap).toBeCloseTo(3, 12);
});

test('inside: points level with corners and tops, too', () => {
  const circle = edges(circleLoop([0, 0], 5));
  for (const p of [[0, 0], [4.999, 0], [-4.999, 0], [0, 4.999], [0, -4.999]] as const) expect(isInLoop(p, circle)).toBe(true); // biome-ignore format: one line
  for (const p of [[5.001, 0], [-5.001, 0], [0, 5.001], [-7, 5], [-7, -5], [-7, 0]] as const) expect(isInLoop(p, circle)).toBe(false); // biome-ignore format: one line
  expect(isInLoop([-1, 10], edges(square))).toBe(false);
  expect(isInLoop([5, 1e-9], edges(square))).toBe(true);
});

describe('self-crossing', () => {
  const crossing: readonly (readonly [string, Loop])[] = [
    ['a bow tie', polygonLoop([[0, 0], [10, 10], [10, 0], [0, 10]])],
    ['an edge that runs back on the one before', polygonLoop([[0, 0], [10, 0], [4, 0], [4, 8]])],
    ['a corner on another edge', polygonLoop([[0, 0], [10, 0], [10, 10], [5, 0], [0, 10]])],
    ['an arc through the edge opposite', [[0, 0, 0], [20, 0, 0], [20, 5, 1], [0, 5, 0]].map((v) => (v[2] === 1 ? [20, 5, -1] : v)) as unknown as Loop],
    ['the same corner twice', polygonLoop([[0, 0], [10, 0], [10, 0], [0, 10]])],
    ['twice round one circle', [[5, 0, 1], [-5, 0, 1], [5, 0, 1], [-5, 0, 1]]],
  ]; // biome-ignore format: one line a case
  test.each(crossing)('%s', (_, loop) => expect(selfCrossing(loop)).not.toBeNull());
  test.each([
    ['a square', square],
    ['a circle', circleLoop([0, 0], 4)],
    ['a slot, its joints tangent', [[-20, -10, 0], [20, -10, 1], [20, 10, 0], [-20, 10, 1]]],
    ['a straight in two', polygonLoop([[0, 0], [5, 0], [10, 0], [10, 10]])],
    ['an arc in two', [[5, 0, Math.tan(Math.PI / 8)], [0, 5, Math.tan(Math.PI / 8)], [-5, 0, 1]]],
  ] as const satisfies readonly (readonly [string, Loop])[])('not %s', (_, loop) => expect(selfCrossing(loop)).toBeNull()); // biome-ignore format: one line a case
});

describe('cutting one loop by another', () => {
  test('half a circle, on either side', () => {
    const right = polygonLoop([[0, -20], [20, -20], [20, 20], [0, 20]]); // biome-ignore format: one line
    for (const keep of ['inside', 'outside'] as const) {
      const half = cutLoop(circleLoop([0, 0], 6), right, keep)!;
      expect(loopArea(half)).toBeCloseTo(Math.PI * 18, 6);
      expect(selfCrossing(half)).toBeNull();
    }
  });
  test('a bite out of an edge, at any turn of the circle', () => {
    const bitten = cutLoop(square, circleLoop([10, 5], 2), 'outside')!;
    expect(loopArea(bitten)).toBeCloseTo(100 - 2 * Math.PI, 6);
    expect(loopArea(cutLoop(square, circleLoop([5, 10], 2), 'outside')!)).toBeCloseTo(100 - 2 * Math.PI, 6);
  });
  test('where they do not meet, all of it or nothing', () => {
    expect(cutLoop(square, circleLoop([50, 5], 2), 'outside')).toHaveLength(4);
    expect(cutLoop(square, circleLoop([50, 5], 2), 'inside')).toBeNull();
  });
});
