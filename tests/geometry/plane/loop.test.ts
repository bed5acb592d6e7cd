/** Loops of straights and arcs against elementary geometry, and bulge = tan(θ/4) (DXF reference, LWPOLYLINE). */
import { describe, expect, test } from 'vitest';
import {
  circleLoop,
  edges,
  type Loop,
  loopArea,
  loopBounds,
  loopLength,
  polygonLoop,
  reversedLoop,
  sampleLoop,
} from '../../../geometry';
import { random } from '../../random';

/** A 60 × 20 slot: two straights, two half circles. */
const SLOT: Loop = [
  [-20, -10, 0],
  [20, -10, 1],
  [20, 10, 0],
  [-20, 10, 1],
];

describe('area and length in closed form', () => {
  test.each([
    ['a circle', circleLoop([3, -4], 7), Math.PI * 49, 14 * Math.PI],
    ['a slot', SLOT, 40 * 20 + Math.PI * 100, 80 + 20 * Math.PI],
    ['a square', polygonLoop([[0, 0], [2, 0], [2, 2], [0, 2]]), 4, 8], // biome-ignore format: one line a case
  ])('%s', (_, loop, area, length) => {
    expect(loopArea(loop)).toBeCloseTo(area, 9);
    expect(loopLength(loop)).toBeCloseTo(length, 9);
    expect(loopArea(reversedLoop(loop))).toBeCloseTo(-area, 9);
    expect(loopLength(reversedLoop(loop))).toBeCloseTo(length, 9);
  });
});

test('the bulge is the tangent of a quarter of the turn', () => {
  for (const degrees of [10, 45, 90, 180, 270, -120]) {
    const turn = (degrees * Math.PI) / 180;
    const arc = edges([[0, 0, Math.tan(turn / 4)], [10, 0, 0]])[0]!.arc!; // biome-ignore format: one line
    expect(arc.turn).toBeCloseTo(turn, 12);
    expect(arc.radius).toBeCloseTo(5 / Math.abs(Math.sin(turn / 2)), 9);
  }
});

test.each([1, 2, 3])('bounds hold every point and are touched by some, seed %i', (seed) => {
  const draw = random(seed);
  const loop: Loop = Array.from({ length: 6 }, () => [100 * draw(), 100 * draw(), 4 * draw() - 2]);
  const points = sampleLoop(loop, 1e-5);
  const { min, max } = loopBounds(loop);
  for (const axis of [0, 1] as const) {
    const on = points.map((p) => p[axis]);
    expect(Math.min(...on)).toBeGreaterThanOrEqual(min[axis] - 1e-9);
    expect(Math.max(...on)).toBeLessThanOrEqual(max[axis] + 1e-9);
    expect(Math.min(...on)).toBeCloseTo(min[axis], 3);
    expect(Math.max(...on)).toBeCloseTo(max[axis], 3);
  }
});
