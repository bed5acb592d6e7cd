/** Rough measures that the search chooses by, against slow and plain ones. */
import { describe, expect, test } from 'vitest';
import { pointAt, resolveHeader } from '../../../geometry';
import { triangleField } from '../../../geometry/clearance/triangleTree';
import { cheapest } from '../../../geometry/layout/cheapest';
import { crowding, obstruction } from '../../../geometry/route/crowd';
import { lineOf } from '../../../geometry/route/line';
import { pathOf } from '../../../geometry/route/sketch';
import { barriersOf, bundlesOf, endOf, startOf } from '../../../geometry/route/stage';
import { taskOf } from '../../../geometry/route/task';
import type { Vec3 } from '../../../shared/vec3';
import { layoutNames, loadLayout } from '../../layouts/load';
import { random } from '../../random';
import { disturb } from '../layout/disturb';

const NAMES = layoutNames('known').filter((name) => /p0[1-9]|p1[3-6]|c[1-4]/.test(name));

describe.each(NAMES)('lines of %s, disturbed by 30 mm', (name) => {
  const { design, meshes } = loadLayout('known', name);
  const drawn = disturb(design, 30, 4);
  const task = taskOf(drawn, meshes, true);
  const header = resolveHeader(drawn);
  const stage = { design: drawn, header };
  const lines = task.runners.map((r) => {
    const { points, radii } = header.runners[r.index]!.centerline!;
    const inlet = drawn.runners[r.index]!.to.inlet!;
    return lineOf(pathOf(startOf(stage, r), endOf(stage, r, inlet), points, radii), r, bundlesOf(stage, r));
  });

  test('known layouts as they are: places lie on the centerline', () => {
    const as = resolveHeader(design);
    for (const r of task.runners) {
      const line = as.runners[r.index]!.centerline!;
      const still = { design, header: as };
      const inlet = design.runners[r.index]!.to.inlet!;
      const path = pathOf(startOf(still, r), endOf(still, r, inlet), line.points, line.radii);
      const { at, count, spacing } = lineOf(path, r, bundlesOf(still, r));
      for (let i = 0; i < count; i++) {
        const { position } = pointAt(line, Math.min(line.length, i * spacing));
        expect(Math.hypot(...position.map((x, k) => x - at[3 * i + k]!))).toBeLessThan(1e-3);
      }
    }
  });

  test('crowding of two lines is that of all places, whatever is passed over', () => {
    for (const [i, a] of lines.entries())
      for (const b of lines.slice(i + 1)) {
        const need = a.tubeRadius + b.tubeRadius + 4 + 1;
        let sum = 0;
        for (let p = 0; p < a.count; p++) {
          let least = need;
          for (let q = 0; q < b.count; q++) {
            if (a.merge === b.merge && p >= a.bundledFrom && q >= b.bundledFrom) continue;
            if (a.from === b.from && p <= a.bundledUntil && q <= b.bundledUntil) continue;
            const d = [0, 1, 2].map((k) => a.at[3 * p + k]! - b.at[3 * q + k]!);
            least = Math.min(least, Math.hypot(...d));
          }
          sum += (need - least) ** 2;
        }
        expect(crowding(a, b, 4)).toBeCloseTo(sum, 6);
      }
  });

  test('obstruction is that of all places', () => {
    for (const [i, line] of lines.entries()) {
      const barriers = barriersOf(task, stage, task.runners[i]!).filter(({ shape }) => !('visit' in shape));
      const skip = Math.ceil(line.tubeRadius / line.spacing);
      let sum = 0;
      for (const { shape, clearance } of barriers)
        for (let p = skip; p < line.count - skip; p++) {
          if ('visit' in shape) continue;
          const room = shape.signedDistance(line.at[3 * p]!, line.at[3 * p + 1]!, line.at[3 * p + 2]!);
          sum += Math.min(0, room - line.tubeRadius - clearance - 1) ** 2;
        }
      expect(obstruction(line, barriers)).toBeCloseTo(sum, 6);
    }
  });
});

test('obstruction by a mesh is that of its nearest triangle at each place', () => {
  const { design, meshes } = loadLayout('known', 'c9-transverse-mesh-bay');
  const drawn = disturb(design, 60, 2);
  const task = taskOf(drawn, meshes, true);
  const header = resolveHeader(drawn);
  const stage = { design: drawn, header };
  let total = 0;
  for (const r of task.runners) {
    const { points, radii } = header.runners[r.index]!.centerline!;
    const path = pathOf(startOf(stage, r), endOf(stage, r, drawn.runners[r.index]!.to.inlet!), points, radii);
    const line = lineOf(path, r, bundlesOf(stage, r));
    const skip = Math.ceil(line.tubeRadius / line.spacing);
    for (const { shape } of barriersOf(task, stage, r)) {
      if (!('visit' in shape)) continue;
      const clearance = 150;
      const need = line.tubeRadius + clearance + 1;
      let sum = 0;
      for (let p = skip; p < line.count - skip; p++) {
        const place: Vec3 = [line.at[3 * p]!, line.at[3 * p + 1]!, line.at[3 * p + 2]!];
        let least = need;
        shape.visit(
          place,
          () => Number.POSITIVE_INFINITY,
          (a, b, c) => {
            least = Math.min(least, triangleField([...a], [...b], [...c])(...place));
          },
        );
        sum += (need - least) ** 2;
      }
      expect(obstruction(line, [{ shape, clearance }])).toBeCloseTo(sum, 6);
      total += sum;
    }
  }
  expect(total).toBeGreaterThan(0);
});

test.each([1, 2, 3, 4, 5])('inlets given out at least cost are so among all orders, seed %i', (seed) => {
  const next = random(seed);
  const costs = Array.from({ length: 4 }, () => Array.from({ length: 5 }, () => next.between(0, 10)));
  const found = cheapest(costs);
  const total = (order: readonly number[]): number => order.reduce((sum, k, i) => sum + costs[i]![k]!, 0);
  let least = Number.POSITIVE_INFINITY;
  const extend = (order: readonly number[]): void => {
    if (order.length === 4) least = Math.min(least, total(order));
    else for (let k = 0; k < 5; k++) if (!order.includes(k)) extend([...order, k]);
  };
  extend([]);
  expect(total(found)).toBeCloseTo(least, 12);
});
