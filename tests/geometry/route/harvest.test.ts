/** Gathering what rounds found: the best first, and only layouts that differ. */
import { describe, expect, test } from 'vitest';
import {
  compareLayouts,
  gathered,
  type Layout,
  MOST_LAYOUTS,
  measuredLayout,
  nothingYet,
  router,
} from '../../../geometry';
import { isDistinct } from '../../../geometry/route/harvest';
import { loadLayout } from '../../layouts/load';

const { design, meshes } = loadLayout('classic', 'c5-twin-port-single');
const { round } = router(design, meshes);
const rounds = Array.from({ length: 12 }, (_, n) => round(n));
const harvest = rounds.reduce(gathered, nothingYet);

describe('twelve rounds', () => {
  test('the best of all is the first', () => {
    const all = rounds.flatMap((r) => r.layouts);
    for (const layout of all) expect(compareLayouts(harvest.best!, layout)).toBeLessThanOrEqual(0);
    expect(harvest.layouts[0]).toBe(harvest.best);
  });

  test('those beside it differ from each other by bends, inlet or way, and all hold', () => {
    expect(harvest.layouts.length).toBeGreaterThan(1);
    expect(harvest.layouts.length).toBeLessThanOrEqual(MOST_LAYOUTS);
    for (const [i, a] of harvest.layouts.entries()) {
      expect(a.report.ok).toBe(true);
      for (const b of harvest.layouts.slice(i + 1)) expect(isDistinct(a.design, b.design)).toBe(true);
    }
  });
});

test('one that holds beats a miss, fewer bends beat less turning, less turning beats room', () => {
  const { design: known } = loadLayout('known', 'c5-twin-port-single');
  const held = measuredLayout(known, meshes);
  const miss: Layout = { ...held, report: { ...held.report, ok: false, problems: [] }, bends: 0 };
  expect(compareLayouts(held, miss)).toBeLessThan(0);
  expect(compareLayouts({ ...held, bends: 4, angle: 900 }, { ...held, bends: 5, angle: 200 })).toBeLessThan(0);
  expect(compareLayouts({ ...held, angle: 200, margin: 0 }, { ...held, angle: 210, margin: 9 })).toBeLessThan(0);
  expect(compareLayouts({ ...held, margin: 5 }, { ...held, margin: 1 })).toBeLessThan(0);
});

test('layouts stand in one order, whatever order they come in', () => {
  const { design: known } = loadLayout('known', 'c5-twin-port-single');
  const held = measuredLayout(known, meshes);
  const near = [0, 0.4, 0.8, 1.2, 1.6].map((more, i) => ({ ...held, angle: 200 + more, margin: i + 1 }));
  const inOrder = [...near].sort(compareLayouts);
  for (const first of near.keys()) {
    const turned = [...near.slice(first), ...near.slice(0, first)];
    expect(turned.sort(compareLayouts)).toEqual(inOrder);
    expect(turned.reverse().sort(compareLayouts)).toEqual(inOrder);
  }
  for (const a of near)
    for (const b of near)
      for (const c of near)
        if (compareLayouts(a, b) < 0 && compareLayouts(b, c) < 0) expect(compareLayouts(a, c)).toBeLessThan(0);
});
