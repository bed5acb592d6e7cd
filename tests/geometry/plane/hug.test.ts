/** The rolled outline against what it must be: round all discs, smooth, and nowhere tighter inward than the ball. */
import { expect, test } from 'vitest';
import {
  type Disc,
  distanceToHull,
  edges,
  hug,
  hullArcs,
  isInLoop,
  loopArea,
  sampleLoop,
  selfCrossing,
} from '../../../geometry';
import { random } from '../../random';
import { sharpest } from './sharpest';

const BALL = 8;

test('two discs: the area of the neck between them in closed form', () => {
  // Centres 30 apart, radius 10, ball 8: the ball's centre lies above the middle by h.
  const h = Math.sqrt(18 ** 2 - 15 ** 2);
  const loop = hug([[{ x: 0, y: 0, r: 10 }], [{ x: 30, y: 0, r: 10 }], [{ x: 0, y: 0, r: 1 }, { x: 30, y: 0, r: 1 }]], BALL)!; // biome-ignore format: one line
  const lean = Math.atan2(h, 15);
  // The quadrilateral disc – ball – disc – ball, less the sectors in it, plus what of the discs lies beyond.
  const area = 30 * h - 2 * (Math.PI / 2 - lean) * BALL ** 2 - 2 * lean * 100 + 2 * Math.PI * 100;
  expect(h - BALL).toBeGreaterThan(1);
  expect(loopArea(loop)).toBeCloseTo(area, 8);
  expect(sharpest(loop)).toBeLessThan(1e-7);
});

test('discs that do not hang together have no one outline of all', () => {
  const loop = hug([[{ x: 0, y: 0, r: 10 }], [{ x: 300, y: 0, r: 12 }]], BALL)!;
  expect(loopArea(loop)).toBeCloseTo(Math.PI * 144, 6);
});

test.each([1, 2, 3, 4, 5, 6])('stars of random discs, shared by several hulls, seed %i', (seed) => {
  const draw = random(seed);
  let whole = 0;
  for (let round = 0; round < 25; round++) {
    const hub: Disc[] = Array.from({ length: draw.whole(1, 4) }, () => ({ x: draw.between(-9, 9), y: draw.between(-9, 9), r: draw.between(18, 25) })); // biome-ignore format: one line
    const arms = Array.from({ length: draw.whole(1, 6) }, (): Disc => {
      const [angle, away] = [draw.between(0, 2 * Math.PI), draw.between(20, 70)];
      return { x: away * Math.cos(angle), y: away * Math.sin(angle), r: draw.between(6, 14) };
    });
    const hulls = arms.map((arm) => [...hub, arm]);
    const loop = hug(hulls, BALL);
    expect(loop).not.toBeNull();
    expect(selfCrossing(loop!)).toBeNull();
    expect(sharpest(loop!)).toBeLessThan(1e-6);
    const belts = hulls.map(hullArcs);
    for (const p of sampleLoop(loop!, 0.01)) {
      // Never into any hull, and never farther off than a ball can bridge.
      const away = Math.min(...belts.map((belt) => distanceToHull(belt, p)));
      expect(away).toBeGreaterThan(-1e-6);
    }
    for (const { x, y } of arms) expect(isInLoop([x, y], edges(loop!))).toBe(true);
    for (const { arc } of edges(loop!)) if (arc && arc.turn < 0) expect(arc.radius).toBeCloseTo(BALL, 6);
    whole++;
  }
  expect(whole).toBe(25);
});
