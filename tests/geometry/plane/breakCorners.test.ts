/** Rounded corners against the area that they take off, by elementary geometry. */
import { expect, test } from 'vitest';
import { circleLoop, cutLoop, loopArea, polygonLoop, selfCrossing } from '../../../geometry';
import { breakCorners } from '../../../geometry/plane/breakCorners';
import { sharpest } from './sharpest';

const square = polygonLoop([[0, 0], [20, 0], [20, 20], [0, 20]]); // biome-ignore format: one line

test('a square loses (4 − π)r²', () => {
  const rounded = breakCorners(square, 3);
  expect(loopArea(rounded)).toBeCloseTo(400 - (4 - Math.PI) * 9, 9);
  expect(sharpest(rounded)).toBeLessThan(1e-9);
});

test('an inward corner stays, and so do corners on an edge too short for two', () => {
  const step = polygonLoop([[0, 0], [20, 0], [20, 10], [10, 10], [10, 20], [0, 20]]); // biome-ignore format: one line
  expect(loopArea(breakCorners(step, 2))).toBeCloseTo(300 - 5 * (1 - Math.PI / 4) * 4, 9);
  expect(breakCorners(square, 11)).toEqual(square);
});

test('corners between arcs and straights come out tangent', () => {
  const bitten = cutLoop(square, circleLoop([20, 10], 5), 'outside')!;
  const rounded = breakCorners(bitten, 1);
  expect(sharpest(rounded)).toBeLessThan(1e-6);
  expect(selfCrossing(rounded)).toBeNull();
  expect(loopArea(rounded)).toBeLessThan(loopArea(bitten));
});

test('a circle has no corners', () => expect(breakCorners(circleLoop([1, 2], 3), 1)).toEqual(circleLoop([1, 2], 3)));
