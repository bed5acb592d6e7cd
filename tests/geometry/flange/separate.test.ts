/** Separate plates: whose fasteners are whose, shared holes halved, and no plate on another. mm. */
import { describe, expect, test } from 'vitest';
import { edges, isInLoop, leastGap, loopArea, movedLoop, selfCrossing } from '../../../geometry';
import { sharpest } from '../plane/sharpest';
import { PAIRED, planOf, ROW } from './flanges';

describe('studs of their own', () => {
  const { plates } = planOf({ ...PAIRED, flange: { plates: 'separate' } });
  test('go to the plate of their port', () => {
    expect(plates.map((p) => p.holes.map((h) => h.fastener))).toEqual([[0, 1], [2, 3]]); // biome-ignore format: one line
    expect(plates.map((p) => p.bites)).toEqual([[], []]);
  });
  test('each plate is about its own port', () => {
    for (const plate of plates)
      expect(plate.holes.map((h) => h.centre[0]).toSorted((a, b) => a - b)).toEqual([-38, 38]);
    expect(loopArea(plates[0]!.outline)).toBeCloseTo(loopArea(plates[1]!.outline), 6);
  });
});

describe('studs between two ports', () => {
  const { plates, warnings, notMade } = planOf({ ...ROW, flange: { plates: 'separate' } });
  test('are shared: a half hole in each', () => {
    expect([...notMade, ...warnings]).toEqual([]);
    expect(plates.map((p) => p.holes.map((h) => h.fastener))).toEqual([[0, 1], [], [6, 7]]); // biome-ignore format: one line
    expect(plates.map((p) => p.bites.map((h) => h.fastener))).toEqual([[2, 3], [2, 3, 4, 5], [4, 5]]); // biome-ignore format: one line
  });
  test('the outline passes round the stud, half of it, at the hole’s radius', () => {
    const { outline, bites } = plates[1]!;
    for (const { centre } of bites) {
      expect(isInLoop(centre, edges(outline))).toBe(false);
      const bite = edges(outline).filter(({ arc }) => arc && arc.radius < 5 && Math.hypot(arc.centre[0] - centre[0], arc.centre[1] - centre[1]) < 1e-6); // biome-ignore format: one line
      expect(bite.every(({ arc }) => Math.abs(arc!.radius - 4.5) < 1e-9 && arc!.turn < 0)).toBe(true);
      // Half of it, less what the gap and the two rounded lips take: their middles lie 2 in from the edge, 6.5 from the stud.
      const turn = bite.reduce((sum, { arc }) => sum - arc!.turn, 0);
      expect(turn).toBeCloseTo(2 * Math.acos(2.5 / 6.5), 6);
    }
    expect(selfCrossing(outline)).toBeNull();
    expect(sharpest(outline)).toBeLessThan(1e-6);
  });
  test('the gap between neighbours is a millimetre', () => {
    const [a, b] = plates;
    const beside = movedLoop(b!.outline, [-90, 0]);
    expect(leastGap(edges(a!.outline), edges(beside)).gap).toBeCloseTo(1, 6);
  });
});

test('a drawn outline is parted too', () => {
  const outline = [[-270, -50, 0], [90, -50, 0], [90, 50, 0], [-270, 50, 0]] as const; // biome-ignore format: one line
  const { plates } = planOf({ ...ROW, flange: { plates: 'separate', outline } });
  const areas = plates.map((p) => loopArea(p.outline));
  const bite = Math.PI * 4.5 ** 2;
  // 360 × 100 less two gaps of a millimetre, and four whole holes less what the gaps take of them.
  const gapped = 2 * (20.25 * Math.asin(0.5 / 4.5) + 0.5 * Math.sqrt(20.25 - 0.25));
  expect(areas.reduce((a, b) => a + b)).toBeCloseTo(360 * 100 - 200 - 4 * (bite - gapped), 5);
});

test('a plate that cannot be made leaves the others', () => {
  const { plates, notMade } = planOf({
    ...PAIRED,
    studs: [[-38, 0], [22, 0], [72, 0], [148, 0]], // biome-ignore format: one line
    flange: { plates: 'separate' },
  });
  expect(plates.map((p) => p.id)).toEqual(['flange f1 plate 2']);
  expect(notMade.every((r) => r.part === 'flange f1 plate 1' && r.where === 'flanges/f1/fasteners/1')).toBe(true);
});
