/** One bend more: what the tooling allows, with both ends held, and taken out again where nothing needs it. */
import { describe, expect, test } from 'vitest';
import { measuredLayout } from '../../../geometry';
import { bends } from '../../../geometry/curve/bends';
import { resolveHeader } from '../../../geometry/header/resolve';
import { randomNumbers } from '../../../geometry/layout/random';
import { withBendMore } from '../../../geometry/route/bendMore';
import { FEASIBLE, settled } from '../../../geometry/route/drawing';
import { simplified } from '../../../geometry/route/simplify';
import { allOf } from '../../../geometry/route/steps';
import { taskOf } from '../../../geometry/route/task';
import { norm, reject, sub } from '../../../geometry/vector';
import { loadLayout } from '../../layouts/load';

const going = (): boolean => false;
const { design: known, meshes } = loadLayout('known', 'p12-medium');
const task = taskOf(loadLayout('public', 'p12-medium').design, meshes);
const header = resolveHeader(known);
const count = (i: number): number => bends(header.runners[i]!.centerline!).length;

describe('one bend more', () => {
  test('is drawn where the tooling allows it, first and last bends on the rays of their ends', () => {
    const random = randomNumbers(7);
    let drawn = 0;
    for (const r of task.runners)
      for (let k = 0; k < 20; k++) {
        const bent = withBendMore(known, header, r, random);
        if (count(r.index) >= r.resolved.tooling.maxBends) expect(bent).toBeNull();
        if (!bent) continue;
        drawn++;
        expect(bent.runners[r.index]!.points!.length).toBe(known.runners[r.index]!.points!.length + 1);
        const resolved = resolveHeader(bent).runners[r.index]!;
        expect(bends(resolved.centerline!).length).toBeGreaterThanOrEqual(count(r.index));
        const { points } = bent.runners[r.index]!;
        for (const [pose, p] of [
          [resolved.start, points![1]!],
          [resolved.end!, points!.at(-2)!],
        ] as const)
          expect(norm(reject(sub(p, pose.position), pose.direction))).toBeLessThan(1e-6);
      }
    expect(drawn).toBeGreaterThan(20);
  });

  test('is none where the tooling has no bend left', () => {
    const full = task.runners.map((r) => ({
      ...r,
      resolved: { ...r.resolved, tooling: { ...r.resolved.tooling, maxBends: count(r.index) } },
    }));
    for (const r of full) expect(withBendMore(known, header, r, randomNumbers(1))).toBeNull();
  });

  test('is taken out again where it is not needed, the lengths equal as before', () => {
    const random = randomNumbers(3);
    let tried = 0;
    for (const r of task.runners) {
      const bent = withBendMore(known, header, r, random);
      const held = bent && settled(bent, task, { steps: 60, stopped: going });
      if (
        !held ||
        held.miss > FEASIBLE ||
        measuredLayout(held.design, meshes).bends <= measuredLayout(known, meshes).bends
      )
        continue;
      tried++;
      const simple = measuredLayout(allOf(simplified(task, held, randomNumbers(5), going, () => {})).design, meshes);
      expect(simple.report.problems).toEqual([]);
      expect(simple.bends).toBeLessThanOrEqual(measuredLayout(known, meshes).bends);
    }
    expect(tried).toBeGreaterThan(1);
  });
});
