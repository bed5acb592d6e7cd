import { describe, expect, test } from 'vitest';
import { centerline } from '../../../geometry';
import { chain } from '../../../geometry/clearance/chain';
import { tubeToTube } from '../../../geometry/clearance/tubeTube';
import type { Vec3 } from '../../../shared/vec3';
import { random } from '../../random';
import { tubeTube, WITHIN } from './bruteForce';
import { LIMIT, randomLine, straight } from './lines';

type Tube = { line: ReturnType<typeof straight>; radius: number };
const gapOf = (a: Tube, b: Tube, below?: number) =>
  tubeToTube(chain(a.line, a.radius)!, chain(b.line, b.radius)!, below);

/** Apart: equal within the promise. Overlapping: both say so. */
function expectAgreement(a: Tube, b: Tube): number {
  const slow = tubeTube(a, b);
  const fast = gapOf(a, b)!.gap;
  const back = gapOf(b, a)!.gap;
  if (slow > LIMIT) {
    expect(Math.abs(fast - slow)).toBeLessThan(LIMIT);
    expect(Math.abs(back - slow)).toBeLessThan(LIMIT);
  } else if (slow < -WITHIN) {
    expect(fast).toBeLessThan(0);
    expect(back).toBeLessThan(0);
  } else expect(Math.abs(fast)).toBeLessThan(LIMIT + Math.abs(slow));
  return slow;
}

describe('against brute force', () => {
  const seen = { apart: 0, clash: 0 };
  test.each(Array.from({ length: 28 }, (_, i) => i + 1))('bent tubes, seed %i', (seed) => {
    const next = random(seed);
    const tube = (): Tube => {
      const radius = next.between(12, 32);
      return { line: randomLine(next, radius, 60), radius };
    };
    if (expectAgreement(tube(), tube()) > 0) seen.apart++;
    else seen.clash++;
  });
  test('saw both tubes apart and tubes that clash', () => {
    expect(seen.apart).toBeGreaterThan(5);
    expect(seen.clash).toBeGreaterThan(5);
  });

  // The flat end decides: tubes that stop short of each other, at every angle.
  test.each(Array.from({ length: 20 }, (_, i) => i + 101))('an end near a side or an end, seed %i', (seed) => {
    const next = random(seed);
    const a: Tube = { line: straight([0, 0, 0], [0, 0, next.between(30, 90)]), radius: next.between(15, 30) };
    const tip: Vec3 = [next.between(-45, 45), next.between(-45, 45), next.between(-30, -2)];
    const far: Vec3 = [next.between(-80, 80), next.between(-80, 80), next.between(-140, -40)];
    expectAgreement(a, { line: straight(far, tip), radius: next.between(15, 30) });
  });
});

describe('by hand', () => {
  const rod = (from: Vec3, to: Vec3, radius = 20): Tube => ({ line: straight(from, to), radius });
  const arc = (radius: number, height: number): ReturnType<typeof straight> =>
    centerline(
      [
        [radius, 0, height],
        [radius, radius, height],
        [0, radius, height],
      ],
      [radius],
    );
  const along = rod([0, 0, 0], [100, 0, 0]);

  test.each<[string, Tube, Tube, number]>([
    ['side by side', along, rod([0, 45, 0], [100, 45, 0]), 5],
    ['side by side, only partly beside each other', along, rod([60, 45, 0], [160, 45, 0]), 5],
    ['side by side, touching', along, rod([0, 40, 0], [100, 40, 0]), 0],
    ['side by side, overlapping by 0.3', along, rod([-50, 39.7, 0], [150, 39.7, 0]), -0.3],
    ['crossing square, one over the other', along, rod([50, -60, 47], [50, 60, 47]), 7],
    ['crossing square, overlapping by 0.4', along, rod([50, -60, 39.6], [50, 60, 39.6]), -0.4],
    ['end to end on one axis', along, rod([103, 0, 0], [200, 0, 0]), 3],
    ['end to end, 30 aside', along, rod([103, 30, 0], [200, 30, 0]), 3],
    ['end to end, 50 aside: rim to rim', along, rod([103, 50, 0], [200, 50, 0]), Math.hypot(3, 10)],
    ['end against a side', along, rod([130, -90, 0], [130, 90, 0]), 10],
    ['one behind the other’s flat end', along, rod([-8, -10, 0], [-60, -10, 0]), 8],
    ['nested arcs of one centre', { line: arc(60, 0), radius: 12 }, { line: arc(90, 0), radius: 12 }, 6],
    ['arcs one above the other', { line: arc(60, 0), radius: 12 }, { line: arc(60, 29), radius: 12 }, 5],
    ['arcs all but of one centre', { line: arc(60, 0), radius: 12 }, { line: arc(90.001, 0.001), radius: 12 }, 6.001],
  ])('%s', (_, a, b, gap) => {
    expect(gapOf(a, b)!.gap).toBeCloseTo(gap, 2);
    expect(gapOf(b, a)!.gap).toBeCloseTo(gap, 2);
  });

  test.each<[string, Tube, Tube]>([
    ['one inside the other on one axis', along, rod([20, 0, 0], [80, 0, 0], 10)],
    ['pushed together end to end', along, rod([95, 0, 0], [200, 0, 0])],
    ['pushed together end to end, 30 aside', along, rod([95, 30, 0], [200, 30, 0])],
    ['crossing through each other', along, rod([50, -60, 0], [50, 60, 0])],
    ['the same tube twice', along, along],
  ])('overlap is negative: %s', (_, a, b) => {
    expect(gapOf(a, b)!.gap).toBeLessThan(0);
    expect(gapOf(b, a)!.gap).toBeLessThan(0);
  });

  test('nothing nearer than asked for is no answer; the place lies between the two', () => {
    const [a, b] = [along, rod([50, -60, 47], [50, 60, 47])];
    expect(gapOf(a, b, 7.01)!.gap).toBeCloseTo(7, 3);
    expect(gapOf(a, b, 6.9)).toBeNull();
    const { at, station } = gapOf(a, b)!;
    expect(station).toBeCloseTo(50, 2);
    for (const [k, x] of [50, 0, 23.5].entries()) expect(at[k]).toBeCloseTo(x, 2);
  });
});
