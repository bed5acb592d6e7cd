/** Drawn shapes: of the length asked, bends counted as the bender does, mostly with one die, radii kept only where they differ. */
import { describe, expect, it } from 'vitest';
import { bends } from '../../../geometry/curve/bends';
import { centerline } from '../../../geometry/curve/centerline';
import { randomNumbers } from '../../../geometry/layout/random';
import { withSketches } from '../../../geometry/route/drawing';
import { type Proposal, propose } from '../../../geometry/route/propose';
import { pathOf, type Sketch, sketched } from '../../../geometry/route/sketch';
import { bundlesOf, endOf, startOf } from '../../../geometry/route/stage';
import { taskOf } from '../../../geometry/route/task';
import type { Design } from '../../../shared/design/types';
import { opposed, RADIUS } from './opposed';

const LENGTH = 620;
const OTHER = 45;

function drawn(design: Design, count: number, draws: number, length: number | null): Proposal[] {
  const task = taskOf(design, new Map());
  const r = task.runners[0]!;
  const random = randomNumbers(5);
  const [start, end] = [startOf(task, r), endOf(task, r, 1)];
  return Array.from({ length: draws }, () => propose(r, start, end, count, length, random)).filter((p) => p !== null);
}

describe('where the bender goes to 330°', () => {
  for (const count of [2, 3, 4])
    it(`${count} bends are ${count} bends, of the length asked, in some a continuous one`, () => {
      const shapes = drawn(opposed(1, 100, 330, 4), count, 400, LENGTH);
      const continuous = shapes.filter((s) => s.joined.includes(true));
      expect(continuous.length).toBeGreaterThan(20);
      const places = new Set<number>();
      for (const { points, radii, joined } of continuous) {
        const line = centerline(points, radii);
        expect(line.length).toBeCloseTo(LENGTH, 0);
        const found = bends(line);
        expect(found.length).toBe(count);
        expect(found.length).toBe(joined.length - joined.filter(Boolean).length);
        const wide = found.findIndex((b) => b.last > b.first);
        expect(joined[found[wide]!.first]).toBe(true);
        expect(found[wide]!.angle).toBeGreaterThan((149.9 * Math.PI) / 180);
        expect(found[wide]!.angle).toBeLessThan((330.1 * Math.PI) / 180);
        places.add(wide);
      }
      expect([...places].sort()).toEqual(Array.from({ length: count }, (_, k) => k));
    });
  it('a sketch counts a continuous bend once', () => {
    const task = taskOf(opposed(1, 100, 330, 4), new Map());
    const r = task.runners[0]!;
    const [start, end] = [startOf(task, r), endOf(task, r, 1)];
    const s = drawn(task.design, 2, 100, LENGTH).find((one) => one.joined.includes(true))!;
    const path = pathOf(start, end, s.points, s.radii);
    expect(sketched(r, 1, path, s.points, s.joined, bundlesOf(task, r), []).bends).toBe(2);
  });
});

it('no continuous bend is drawn where the bender stops at 150°', () => {
  const shapes = drawn(opposed(1, 150, 150, 4), 3, 300, LENGTH);
  expect(shapes.length).toBeGreaterThan(50);
  for (const { joined } of shapes) expect(joined).toEqual([false, false, false]);
});

describe('two dies', () => {
  const one = opposed(1, 150, 170, 4);
  const design: Design = { ...one, tooling: { primary: { ...one.tooling.primary!, otherRadii: [OTHER] } } };
  const shapes = drawn(design, 3, 400, LENGTH);

  it('most shapes take one, some take both', () => {
    const only = (die: number): number => shapes.filter((s) => s.radii.every((r) => r === die)).length;
    const both = shapes.length - only(RADIUS) - only(OTHER);
    expect(only(RADIUS) + only(OTHER)).toBeGreaterThan(both);
    for (const some of [only(RADIUS), only(OTHER), both]) expect(some).toBeGreaterThan(shapes.length / 10);
  });
  it('the document keeps radii only where some are not the usual one', () => {
    const task = taskOf(design, new Map());
    for (const { points, radii } of shapes.slice(0, 40)) {
      const sketch = { inlet: 1, points, radii } as unknown as Sketch;
      const [runner] = withSketches(task.design, task.runners, [sketch]).runners;
      expect(runner!.radii).toEqual(radii.some((r) => r !== RADIUS) ? radii : undefined);
    }
  });
});
