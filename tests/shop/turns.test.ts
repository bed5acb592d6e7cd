/** Turns and arcs by one name and one formula: folded into their ranges, and what they are along a middle line or round a tube. */
import { describe, expect, test } from 'vitest';
import { halfTurn, wholeTurn } from '../../src/shop/angles';
import { arcAngle, arcLength, aroundTube } from '../../src/shop/arcs';

describe('turns', () => {
  test.each([
    [0, 0, 0],
    [-0, 0, 0],
    [180, 180, 180],
    [-180, 180, 180],
    [-180 + 1e-13, 180, 180],
    [180 + 1e-13, 180, 180],
    [190, -170, 190],
    [-190, 170, 170],
    [-30.1, -30.1, 329.9],
    [360 - 1e-13, 0, 0],
    [725, 5, 5],
  ])('%d is %d to one side, %d round', (degrees, half, whole) => {
    expect(halfTurn(degrees)).toBeCloseTo(half, 9);
    expect(wholeTurn(degrees)).toBeCloseTo(whole, 9);
    expect(Object.is(halfTurn(degrees), -0)).toBe(false);
  });

  test('one that is in its range already is not touched', () => {
    for (let degrees = -179.9; degrees < 180; degrees += 0.7) expect(halfTurn(degrees)).toBe(degrees);
  });
});

test('arcs: a quarter of a circle, back to its angle, and half round a tube', () => {
  expect(arcLength({ angle: 90, radius: 60 })).toBeCloseTo((2 * Math.PI * 60) / 4, 12);
  expect(arcAngle(arcLength({ angle: 33, radius: 75 }), 75)).toBeCloseTo(33, 12);
  expect(aroundTube(-180, 42.4)).toBeCloseTo((-Math.PI * 42.4) / 2, 12);
});
