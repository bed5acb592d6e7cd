/** A layout that holds made simpler and smoother: never worse, and every rule still holds. */
import { describe, expect, test } from 'vitest';
import { measuredLayout } from '../../../geometry';
import { randomNumbers } from '../../../geometry/layout/random';
import type { Settled } from '../../../geometry/route/drawing';
import { simplified } from '../../../geometry/route/simplify';
import { smoothed } from '../../../geometry/route/smooth';
import { allOf } from '../../../geometry/route/steps';
import { taskOf } from '../../../geometry/route/task';
import { loadLayout } from '../../layouts/load';

const going = (): boolean => false;

describe.each(['p02-easy', 'p09-medium', 'c2-i4-4-2-1', 'c4-v8-bank-shaft'])('known layout of %s', (name) => {
  const known = loadLayout('known', name);
  const { design, meshes } = loadLayout(name.startsWith('c') ? 'classic' : 'public', name);
  const task = taskOf(design, meshes);
  const from: Settled = { design: known.design, miss: 0, cost: 0, blame: task.runners.map(() => 0) };
  const before = measuredLayout(known.design, meshes);

  test('smoothed: it turns less, or as much, with the same bends or fewer', () => {
    const after = measuredLayout(smoothed(task, from, going).design, meshes);
    expect(after.report.problems).toEqual([]);
    expect(after.angle).toBeLessThanOrEqual(before.angle + 1e-6);
    expect(after.bends).toBeLessThanOrEqual(before.bends);
  });

  test('simplified: each one told of has fewer bends than the one before', () => {
    let bends = before.bends;
    const steps = simplified(task, from, randomNumbers(3), going, (simpler) => {
      const layout = measuredLayout(simpler.design, meshes);
      expect(layout.report.problems).toEqual([]);
      expect(layout.bends).toBeLessThan(bends);
      bends = layout.bends;
    });
    expect(measuredLayout(allOf(steps).design, meshes).bends).toBe(bends);
  });
});
