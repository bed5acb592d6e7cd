/** Ends against their target, and how far they are magnified. */
import { describe, expect, it } from 'vitest';
import type { Group } from '../../../shared/design/types';
import { endGroups, roundUp, windowFor } from '../../../src/app/rack/ends';
import { rulerMarks, scaleTo, spanOf } from '../../../src/app/rack/scale';
import type { Strip } from '../../../src/app/rack/strip';

const strip = (id: string, length: number | null, group: string | null = 'a'): Strip => ({
  id,
  group,
  length,
  pieces: [],
});
const groups = (group: Group) => new Map([['a', group]]);

describe('ends', () => {
  it('are measured from the group length', () => {
    const [g] = endGroups([strip('r1', 801.5), strip('r2', 799.5)], groups({ length: 800, tolerance: 1 }));
    expect(g).toMatchObject({ target: 800, free: false, spread: 2 });
    expect(g!.ends).toEqual([
      { id: 'r1', deviation: 1.5, outside: true },
      { id: 'r2', deviation: -0.5, outside: false },
    ]);
  });

  it('are measured from the mean where the length is free, and fail by the spread alone', () => {
    const free = groups({ length: null, tolerance: 1 });
    const [within] = endGroups([strip('r1', 801), strip('r2', 799)], free);
    expect(within).toMatchObject({ target: 800, free: true });
    expect(within!.ends.map((e) => e.outside)).toEqual([false, false]);
    // One far from a close crowd: more than the tolerance from the mean, yet max − min ≤ 2 × tolerance.
    const [crowd] = endGroups([strip('r1', 801.6), strip('r2', 800), strip('r3', 800), strip('r4', 800)], free);
    expect(crowd!.ends[0]).toMatchObject({ deviation: expect.closeTo(1.2, 9), outside: false });
    const [wide] = endGroups([strip('r1', 802), strip('r2', 799.5)], free);
    expect(wide!.ends.some((e) => e.outside)).toBe(true);
  });

  it('leave out runners that are not laid, and runners in no group', () => {
    const all = endGroups(
      [strip('r1', 800), strip('r2', null), strip('x', 500, null)],
      groups({ length: null, tolerance: 1 }),
    );
    expect(all[0]!.ends[1]).toEqual({ id: 'r2', deviation: null, outside: false });
    expect(all[1]).toMatchObject({ id: null, target: null });
    expect(all[1]!.ends[0]).toEqual({ id: 'x', deviation: null, outside: false });
  });

  it('have no target where a free group has nothing laid', () => {
    const [g] = endGroups([strip('r1', null)], groups({ length: null, tolerance: 1 }));
    expect(g).toMatchObject({ target: null, spread: null });
  });
});

describe('the glass', () => {
  const end = (deviation: number) => ({ id: 'r', deviation, outside: false });

  it('always shows the farthest end, up to its widest', () => {
    for (const d of [0.0006, 0.004, 0.03, 0.49, 1, 2.41, 9.9, 30]) {
      const window = windowFor([end(-d), end(d / 2)], 1);
      expect(window).toBeGreaterThan(d);
      expect(window).toBeLessThanOrEqual(Math.min(50, 5.5 * d));
    }
    expect(windowFor([end(400)], 1)).toBe(50);
  });

  it('shows the slack where the ends are even', () => {
    expect(windowFor([end(0), end(1e-7)], 3)).toBe(5);
  });
});

describe('rounding up', () => {
  it('gives 1, 2 or 5 times a power of ten', () => {
    expect([0.011, 0.2, 0.21, 1, 3, 5.5, 99].map(roundUp)).toEqual([0.02, 0.2, 0.5, 1, 5, 10, 100]);
  });
});

describe('the scale', () => {
  const all = endGroups([strip('r1', 780), strip('r2', 812)], groups({ length: 800, tolerance: 1 }));

  it('is one for all strips and holds the longest end and the target', () => {
    const scale = scaleTo(spanOf(all), 600);
    expect(scale.x(812)).toBeLessThan(600);
    expect(scale.x(812)).toBeGreaterThan(580);
  });

  it('marks round lengths far enough apart to label', () => {
    const scale = scaleTo(spanOf(all), 600);
    expect(rulerMarks(scale, 'mm').map((m) => m.label)).toEqual([
      '0',
      '100',
      '200',
      '300',
      '400',
      '500',
      '600',
      '700',
      '800',
    ]);
    const inches = rulerMarks(scale, 'in');
    expect(inches.map((m) => m.label)).toEqual(['0', '5', '10', '15', '20', '25', '30']);
    expect(inches[1]!.mm).toBeCloseTo(127, 9);
  });
});
