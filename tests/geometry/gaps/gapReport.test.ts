/** The list of gaps against `check`, and against brute force that shares nothing with it. */
import { describe, expect, test } from 'vitest';
import { check, distance, gapReport, type Meshes, resolveHeader } from '../../../geometry';
import type { Design, Surrounding } from '../../../shared/design/types';
import { layoutNames, loadLayout } from '../../layouts/load';
import {
  type Distance,
  frustumPatches,
  type Patch,
  toBox,
  toCapsule,
  toTube,
  tubePatches,
} from '../clearance/bruteForce';

/** Both searches stop within a micron or so of the least; brute force within 0.02. */
const SAME = 0.003;
const LIMIT = 0.05;

/** A copy that shares nothing, so that nothing measured of one is remembered for the other. */
const again = (design: Design): Design => JSON.parse(JSON.stringify(design));
const report = (design: Design, meshes: Meshes, within?: number) =>
  gapReport(resolveHeader(again(design)), new Map(meshes), within ? { within } : {});

const layouts = layoutNames('known').map((name) => loadLayout('known', name));

describe('the least of each kind is what check says', () => {
  test.each(layouts)('$name', ({ design, meshes }) => {
    const { clearance } = check(again(design), meshes);
    const { gaps } = report(design, meshes);
    const margins = gaps.map((g) => g.margin);
    expect(margins).toEqual([...margins].sort((a, b) => a - b));
    for (const [kind, least] of [
      ['tube-to-tube', clearance.tubeToTube],
      ['surroundings', clearance.surroundings],
      ['merge-body', clearance.mergeBodies],
    ] as const) {
      const found = gaps.find((g) => g.kind === kind);
      if (least && least.margin < 60) expect(Math.abs(found!.margin - least.margin)).toBeLessThan(SAME);
      else expect(found).toBeUndefined();
    }
  });
});

const toSurrounding = (s: Surrounding) =>
  s.shape === 'box' ? toBox(s.min, s.max) : s.shape === 'capsule' ? toCapsule(s.a, s.b, s.radius) : null;

describe('every gap is between two places that are so far apart, one on each skin', () => {
  test.each(layouts.slice(0, 12))('$name', ({ design, meshes }) => {
    const header = resolveHeader(again(design));
    const { gaps } = gapReport(header, meshes);
    expect(gaps.length).toBeGreaterThan(0);
    for (const g of gaps) {
      expect(Math.abs(distance(g.from, g.to) - Math.abs(g.gap))).toBeLessThan(SAME);
      const runner = header.runners.find((r) => r.runner.id === g.between[0]);
      if (runner) expect(Math.abs(toTube(runner.centerline!, runner.tubeRadius)(g.from))).toBeLessThan(0.01);
      const around = design.surroundings?.find((s) => s.id === g.between[1]);
      const field = around && toSurrounding(around);
      if (field && g.gap > 0) expect(Math.abs(field(g.to))).toBeLessThan(0.01);
    }
  });
});

/** Least of a distance over a skin: everywhere on a grid of 2 mm, then ever finer about the few best places. */
function sampledLeast(patches: readonly Patch[], f: Distance): number {
  const best: { patch: Patch; u: number; v: number; value: number }[] = [];
  for (const patch of patches) {
    const [m, n] = [0, 1].map((k) => Math.ceil(((patch.high[k]! - patch.low[k]!) * patch.speed[k]!) / 2)) as [
      number,
      number,
    ];
    for (let i = 0; i <= m; i++)
      for (let j = 0; j <= n; j++) {
        const u = patch.low[0] + (i / m) * (patch.high[0] - patch.low[0]);
        const v = patch.low[1] + (j / n) * (patch.high[1] - patch.low[1]);
        best.push({ patch, u, v, value: f(patch.point(u, v)) });
      }
  }
  best.sort((a, b) => a.value - b.value);
  let least = best[0]!.value;
  for (const { patch, u, v } of best.slice(0, 8)) {
    let [bu, bv] = [u, v];
    for (let size = 2; size > 0.01; size /= 2) {
      let own = Number.POSITIVE_INFINITY;
      const [cu, cv] = [bu, bv];
      for (let i = -4; i <= 4; i++)
        for (let j = -4; j <= 4; j++) {
          const x = Math.min(patch.high[0], Math.max(patch.low[0], cu + (i * size) / 4 / patch.speed[0]));
          const y = Math.min(patch.high[1], Math.max(patch.low[1], cv + (j * size) / 4 / patch.speed[1]));
          const value = f(patch.point(x, y));
          if (value >= own) continue;
          own = value;
          [bu, bv] = [x, y];
        }
      least = Math.min(least, own);
    }
  }
  return least;
}

describe('each gap to a surrounding against brute force', () => {
  const few = ['c4-v8-bank-shaft', 'c2-i4-4-2-1', 'c7-transverse-firewall'].map((name) => loadLayout('known', name));
  test.each(few)('$name', ({ design, meshes }) => {
    const header = resolveHeader(again(design));
    const { gaps } = gapReport(header, meshes);
    let compared = 0;
    const compare = (id: string, skin: readonly Patch[], own: (s: Surrounding) => number): void => {
      for (const s of design.surroundings ?? []) {
        const field = toSurrounding(s);
        if (!field) continue;
        const slow = sampledLeast(skin, field);
        const found = gaps.find((g) => g.between[0] === id && g.between[1] === s.id);
        compared++;
        if (!found) expect(slow - own(s)).toBeGreaterThan(60 - LIMIT);
        else if (slow > LIMIT) expect(Math.abs(found.gap - slow)).toBeLessThan(LIMIT);
      }
    };
    for (const r of header.runners)
      compare(r.runner.id, tubePatches(r.centerline!, r.tubeRadius), (s) => s.clearance ?? 0);
    for (const { merge, body } of header.merges.values()) compare(merge.id, frustumPatches(body), () => 0);
    expect(compared).toBeGreaterThan(4);
  });
});
