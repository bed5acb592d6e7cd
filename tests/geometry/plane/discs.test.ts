/** Belts round discs against elementary geometry and against a polygon sampled from each disc. */
import { describe, expect, test } from 'vitest';
import {
  type Disc,
  distanceToHull,
  edges,
  grown,
  hullArcs,
  hullLoop,
  isInLoop,
  loopArea,
  loopBounds,
  loopLength,
} from '../../../geometry';
import { random } from '../../random';

const disc = (x: number, y: number, r: number): Disc => ({ x, y, r });

describe('known belts', () => {
  test('one disc', () => expect(loopArea(hullLoop([disc(3, 4, 5)]))).toBeCloseTo(Math.PI * 25, 9));
  test('a crossed belt is never: two pulleys, open belt length by the textbook formula', () => {
    const [d, a, b] = [100, 30, 10];
    const lean = Math.asin((a - b) / d);
    const length = 2 * d * Math.cos(lean) + Math.PI * (a + b) + 2 * lean * (a - b);
    expect(loopLength(hullLoop([disc(0, 0, a), disc(d, 0, b)]))).toBeCloseTo(length, 9);
  });
  test('a rounded rectangle', () => {
    const corners = [-20, 20].flatMap((x) => [-10, 10].map((y) => disc(x, y, 5)));
    expect(loopArea(hullLoop(corners))).toBeCloseTo(50 * 30 - (4 - Math.PI) * 25, 9);
    expect(hullLoop(corners)).toHaveLength(8);
  });
  test('sharp corners', () => {
    const square = [-1, 1].flatMap((x) => [-1, 1].map((y) => disc(x, y, 0)));
    expect(hullLoop(square)).toHaveLength(4);
    expect(loopArea(hullLoop(square))).toBeCloseTo(4, 12);
  });
  test('what lies inside, or in line between, changes nothing', () => {
    const slot = hullLoop([disc(0, 0, 5), disc(40, 0, 5)]);
    expect(loopArea(hullLoop([disc(0, 0, 5), disc(10, 0, 5), disc(30, 1, 2), disc(40, 0, 5)]))).toBeCloseTo(
      loopArea(slot),
      9,
    );
  });
});

test.each([1, 2, 3, 4, 5])(
  'random discs: the belt holds each, touches what it goes round, is convex; seed %i',
  (seed) => {
    const draw = random(seed);
    for (let round = 0; round < 40; round++) {
      const discs = Array.from({ length: draw.whole(1, 7) }, () =>
        disc(draw.between(-50, 50), draw.between(-50, 50), draw.between(0.5, 25)),
      );
      const loop = hullLoop(discs);
      const arcs = hullArcs(discs);
      expect(arcs.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(2 * Math.PI, 9);
      expect(edges(loop).every(({ arc }) => !arc || (arc.turn > 0 && arc.turn <= Math.PI + 1e-9))).toBe(true);
      const { min, max } = loopBounds(loop);
      expect(max[0]).toBeCloseTo(Math.max(...discs.map((d) => d.x + d.r)), 9);
      expect(min[1]).toBeCloseTo(Math.min(...discs.map((d) => d.y - d.r)), 9);
      for (const { x, y, r } of discs)
        for (let k = 0; k < 12; k++) {
          const p = [x + r * Math.cos(k), y + r * Math.sin(k)] as const;
          expect(distanceToHull(arcs, p)).toBeLessThan(1e-9);
        }
      // Inside by distance is inside by crossings; grown by 3, a point is 3 deeper.
      for (let k = 0; k < 20; k++) {
        const p = [draw.between(-90, 90), draw.between(-90, 90)] as const;
        const away = distanceToHull(arcs, p);
        if (Math.abs(away) > 1e-6) expect(isInLoop(p, edges(loop))).toBe(away < 0);
        expect(distanceToHull(hullArcs(grown(discs, 3)), p)).toBeCloseTo(away - 3, 9);
        expect(distanceToHull(arcs, p, 3)).toBeCloseTo(away - 3, 9);
      }
    }
  },
);
