/**
 * A collector's templates against numeric intersection of exact cylinders: along each line of a tube, the place where
 * another tube's surface or the end is first reached, found by stepping and halving, with no plane in sight.
 */
import { describe, expect, test } from 'vitest';
import { collectorCuts, collectorPlan, extremes, stubCut, stubs } from '../../../geometry';
import { addScaled, cross, dot, norm, reject, sub, unit } from '../../../geometry/vector';
import type { Merge } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { collectorHeader, PATTERNS } from '../collector/designs';

const STATIONS = 64;

/** From a tube's square end along one of its lines to the first other tube, or to the end plane; infinite where neither comes. */
function firstReached(start: Vec3, along: Vec3, others: readonly { p: Vec3; d: Vec3 }[], radius: number, end: number) {
  const inside = (s: number): boolean => {
    const x = addScaled(start, along, s);
    return x[2] > end || others.some(({ p, d }) => norm(reject(sub(x, p), d)) < radius - 1e-9);
  };
  for (let s = 0; s < 400; s += 0.25)
    if (inside(s)) {
      let [low, high] = [Math.max(0, s - 0.25), s];
      for (let i = 0; i < 50; i++) {
        const middle = (low + high) / 2;
        if (inside(middle)) high = middle;
        else low = middle;
      }
      return high;
    }
  return Number.POSITIVE_INFINITY;
}

const CASES = PATTERNS.flatMap((pattern) =>
  [2, 3, 4, 5, 6].flatMap((inlets) =>
    [5, 10, 20].map((convergence) => ({ pattern, inlets, convergence }) satisfies Partial<Merge>),
  ),
)
  // In a line, tubes side by side that lean come nearer than their pitch.
  .map((c) => ({ ...c, length: 200, pitch: c.pattern === 'line' ? 46 : 42.4 }))
  .filter((c) => collectorCuts(collectorHeader(c)).length > 0);

test('enough cases have cuts', () => expect(CASES.length).toBeGreaterThan(20));

describe.each(CASES)('$inlets in a $pattern leaning by $convergence°', (change) => {
  const header = collectorHeader(change);
  const plan = collectorPlan(header, header.merges.get('m1')!);
  const cuts = stubs(plan).map((stub) => stubCut(header, plan, stub));

  test('every curve is the intersection of the cylinders, within 0.05 mm', () => {
    expect(cuts).toHaveLength(change.inlets);
    cuts.forEach((cut, k) => {
      const { position, direction, outward } = plan.inlets[k]!;
      const others = plan.inlets.filter((_, i) => i !== k).map((i) => ({ p: i.position, d: i.direction }));
      const y = unit(reject(outward, direction));
      const x = cross(y, direction);
      for (let i = 0; i < STATIONS; i++) {
        // From the seam, on y, right-handed about the way in.
        const a = (2 * Math.PI * i) / STATIONS;
        const start = addScaled(addScaled(position, y, 21.2 * Math.cos(a)), x, -21.2 * Math.sin(a));
        const expected = firstReached(start, direction, others, 21.2, plan.tubesEnd);
        expect(Math.abs(cut.height(a) - expected), `${cut.id}, ${((a * 180) / Math.PI).toFixed(1)}°`).toBeLessThan(
          0.05,
        );
      }
    });
  });

  test('heel and crotch are its longest and shortest lines, and it turns a corner only where it says', () => {
    for (const cut of cuts) {
      const fine = Array.from({ length: 2000 }, (_, i) => (2 * Math.PI * i) / 2000);
      const heights = fine.map(cut.height);
      expect(cut.height(cut.heel)).toBeGreaterThan(Math.max(...heights) - 0.01);
      expect(cut.height(cut.crotch)).toBeLessThan(Math.min(...heights) + 0.01);
      const step = (2 * Math.PI) / 2000;
      fine.forEach((a, i) => {
        const bend = heights[(i + 1) % 2000]! - 2 * heights[i]! + heights[(i + 1999) % 2000]!;
        if (cut.corners.some((c) => Math.abs(Math.sin((c - a) / 2)) < step)) return;
        // A plane's curve is a + b·cos, b the radius over the sine of tube and plane: its second difference is at most b·step².
        const least = Math.sin((change.convergence * Math.PI) / 180) * Math.sin(Math.PI / 6);
        expect(Math.abs(bend)).toBeLessThan((1.05 * 21.2 * step ** 2) / least);
      });
    }
  });
});

test('the axes of neighbouring tubes lie in one plane, so that what they share is one', () => {
  for (const inlets of [3, 4, 6]) {
    const header = collectorHeader({ inlets });
    const [a, b] = collectorPlan(header, header.merges.get('m1')!).inlets;
    expect(dot(sub(b!.position, a!.position), cross(a!.direction, b!.direction))).toBeCloseTo(0, 9);
  }
});

describe('templates', () => {
  const ids = (change: Partial<Merge>) => collectorCuts(collectorHeader({ length: 200, ...change })).map((c) => c.id);

  test('tubes of a ring are cut alike and share one; those of a line by pairs', () => {
    expect(ids({})).toEqual(['m1 stubs 1 2 3 4']);
    expect(ids({ pattern: 'line', inlets: 3, pitch: 46 })).toEqual(['m1 stubs 1 3', 'm1 stub 2']);
  });

  test('a tube that is cut square needs none', () => {
    expect(ids({ convergence: 0, pitch: 60, mergingLength: 30 })).toEqual([]);
  });

  test('where a weld gap takes the tube away to its base line there are two crotches, not dozens', () => {
    const [cut] = collectorCuts(collectorHeader({ weldGap: 1.5 }));
    expect(extremes(cut!.height, cut!.corners).lowest).toHaveLength(2);
  });
});
