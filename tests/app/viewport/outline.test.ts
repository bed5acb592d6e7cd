/** Outlines of plates and collectors, and the places of labels, by the properties that make them right. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lobedOutline } from '../../../src/app/viewport/model/lobes';
import { circle, hull, hullOutline, type Point2 } from '../../../src/app/viewport/model/outline';
import { openingOutline } from '../../../src/app/viewport/model/plates';
import { placeLabels } from '../../../src/app/viewport/overlay/place';

const area = (ring: readonly Point2[]) =>
  ring.reduce((sum, [x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);
const coordinate = fc.integer({ min: -100, max: 100 });
const cloud = fc.array(fc.tuple(coordinate, coordinate), { minLength: 4, maxLength: 30 });

describe('hull', () => {
  it('turns left at every corner and leaves no point outside', () => {
    fc.assert(
      fc.property(cloud, (points) => {
        const ring = hull(points);
        fc.pre(ring.length > 2);
        ring.forEach((a, i) => {
          const b = ring[(i + 1) % ring.length]!;
          for (const p of points)
            expect((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])).toBeGreaterThanOrEqual(0);
        });
      }),
      { seed: 21 },
    );
  });
});

describe('hullOutline', () => {
  it('encloses the area of Steiner’s formula: A + P·m + π·m²', () => {
    const square: Point2[] = [
      [0, 0],
      [40, 0],
      [40, 30],
      [0, 30],
    ];
    const exact = 1200 + 140 * 10 + Math.PI * 100;
    const drawn = area(hullOutline(square, 10));
    expect(drawn).toBeLessThan(exact);
    expect(drawn / exact).toBeGreaterThan(0.999);
  });
});

describe('openingOutline', () => {
  it('has the area of its shape, arcs counted as sides of a regular 48-gon', () => {
    const pi = 24 * Math.sin(Math.PI / 24);
    expect(area(openingOutline({ shape: 'round', diameter: 36 }))).toBeCloseTo(pi * 18 ** 2, 9);
    const box = openingOutline({ shape: 'rounded-rectangle', width: 40, height: 30, corner: 8 });
    expect(area(box)).toBeCloseTo(40 * 30 - (4 - pi) * 64, 9);
    expect(area(openingOutline({ shape: 'oval', width: 44, height: 30 }))).toBeCloseTo(14 * 30 + pi * 225, 9);
  });

  it('runs anticlockwise and inside its width and height', () => {
    const points = openingOutline({ shape: 'oval', width: 30, height: 44 });
    expect(area(points)).toBeGreaterThan(0);
    expect(Math.max(...points.map((p) => p[1]))).toBeCloseTo(22, 9);
    expect(Math.max(...points.map((p) => p[0]))).toBeCloseTo(15, 9);
  });
});

describe('lobedOutline', () => {
  const angles = Array.from({ length: 96 }, (_, i) => (2 * Math.PI * i) / 96);

  it('is the circle itself for one tube', () => {
    for (const r of lobedOutline([{ x: 0, y: 0, radius: 20 }], angles)) expect(r).toBeCloseTo(20, 1);
  });

  it('touches each tube of a ring and folds in between, never beyond the circle that encloses them', () => {
    const circles = [1, 3, 5, 7].map((k) => {
      const a = (k * Math.PI) / 4;
      return { x: 30 * Math.cos(a), y: 30 * Math.sin(a), radius: 21.2 };
    });
    const r = lobedOutline(circles, angles);
    expect(r[12]).toBeCloseTo(51.2, 6);
    expect(r[0]!).toBeLessThan(45);
    expect(Math.max(...r)).toBeLessThanOrEqual(51.2 + 1e-9);
  });
});

describe('placeLabels', () => {
  const size = { width: 400, height: 300 };
  const box = (...candidates: [number, number][]) => ({ width: 40, height: 18, candidates });

  it('moves the lesser label to its next place, and hides it when none is free', () => {
    expect(placeLabels([box([100, 100]), box([110, 105], [200, 100]), box([100, 100])], size)).toEqual([
      [100, 100],
      [200, 100],
      null,
    ]);
  });

  it('keeps off what is blocked', () => {
    expect(placeLabels([box([100, 100], [200, 100])], size, [{ l: 80, r: 120, t: 90, b: 95 }])).toEqual([[200, 100]]);
  });

  it('shows what must be shown, but nothing outside the picture', () => {
    const must = { ...box([100, 100]), must: true };
    expect(placeLabels([box([100, 100]), must, box([5, 5])], size)).toEqual([[100, 100], [100, 100], null]);
  });
});

describe('circle', () => {
  it('keeps its radius', () => {
    for (const [x, y] of circle([3, 4], 5)) expect(Math.hypot(x - 3, y - 4)).toBeCloseTo(5, 12);
  });
});
