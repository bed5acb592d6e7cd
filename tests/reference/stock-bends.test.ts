/** Stock bends and how they are cut, against what a stockist and a how-to print; keys of fabrication.json in the tests. */
import { expect, test } from 'vitest';
import { addScaled, dot, norm, sub } from '../../geometry';
import { WORKSHOP_DEFAULTS } from '../../shared/stock/workshop';
import { supplyOf } from '../../src/shop/making/welded/stock';
import { sameTube } from '../../src/shop/nest/sameTube';
import { examples, madeOf } from '../shop/making/welded/designs';
import { published } from './published';

// A stockist's matrix of J-bends (bends.matrix, read in source), inches.
const matrix = Object.entries(published<Record<string, number[]>>('bends.matrix'));

test.each(matrix)('J-bends of %s in: each radius is found among all, and one between is not', (od, radii) => {
  const tube = (inches: number) => ({ outsideDiameter: inches * 25.4, wall: 1.65 });
  const bends = matrix.flatMap(([diameter, list]) =>
    list.map((clr) => ({
      ...tube(Number(diameter)),
      id: `${diameter} ${clr}`,
      radius: clr * 25.4,
      angle: 180,
      legs: [100, 300] as const,
    })),
  );
  const mine = tube(Number(od));
  for (const clr of radii) {
    const { stock, otherRadii } = supplyOf({ bends }, mine, clr * 25.4);
    expect(stock.map(({ id }) => id)).toEqual([`${od} ${clr}`]);
    expect(otherRadii).toBeNull();
  }
  const { otherRadii, assumed } = supplyOf({ bends }, mine, (radii[0]! + 0.1) * 25.4);
  expect(otherRadii).toEqual(radii.map((clr) => clr * 25.4));
  expect(assumed).toBe(false);
  expect(bends.filter((bend) => sameTube(bend, mine))).toHaveLength(radii.length);
});

// "Cut on a plane through the bend centre, square to the centreline, so the end stays round" (bends.cut, read in source).
test.each(examples)('cuts of %s lie in a plane through the bend’s centre, square to the tube', (_, design) => {
  expect(published<string>('bends.cut')).toContain('plane through the bend centre');
  let seen = 0;
  const { parts, tubes } = madeOf(design);
  for (const [i, { line }] of parts.entries())
    for (const segment of line.segments) {
      if (segment.kind !== 'arc') continue;
      const centre = addScaled(segment.start, segment.inward, segment.radius);
      for (const { station, position, direction } of tubes[i]!.joints) {
        if (station < segment.station - 1e-6 || station > segment.station + segment.length + 1e-6) continue;
        seen++;
        expect(Math.abs(dot(sub(centre, position), direction))).toBeLessThan(1e-6);
        expect(norm(sub(centre, position))).toBeCloseTo(segment.radius, 6);
      }
    }
  expect(seen).toBeGreaterThan(parts.length);
});

// Kerfs of tube saws (kerf.saw, from memory): what is taken where the workshop does not say is one of a band saw and of a disc.
test('the usual kerf is within the ranges of band saws and cut-off discs', () => {
  const text = published<string>('kerf.saw');
  for (const saw of ['metal band saw', 'cut-off disc']) {
    const [, low, high] = new RegExp(`${saw} ([\\d.]+)-([\\d.]+)`).exec(text)!;
    expect(WORKSHOP_DEFAULTS.kerf).toBeGreaterThanOrEqual(Number(low));
    expect(WORKSHOP_DEFAULTS.kerf).toBeLessThanOrEqual(Number(high));
  }
});
