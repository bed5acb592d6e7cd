/** Headers laid from nothing: every rule holds, the same seed comes to the same layout, and what is not to be touched is not. */
import { describe, expect, test } from 'vitest';
import { check, type Layout, type Meshes, resolveHeader, router } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { type Folder, loadLayout } from '../../layouts/load';

const NO_MESHES: Meshes = new Map();
const PROBLEMS: readonly (readonly [Folder, string])[] = [
  ['public', 'p01-easy'],
  ['public', 'p04-easy'],
  ['public', 'p10-medium'],
  ['public', 'p26-medium'],
  ['public', 'p16-hard'],
  ['classic', 'c2-i4-4-2-1'],
  ['classic', 'c5-twin-port-single'],
  ['classic', 'c6-i3-3-1'],
  ['classic', 'c9-transverse-mesh-bay'],
];

/** Rounds until something holds. */
function firstLaid(design: Design, meshes: Meshes, rounds = 6): Layout | null {
  const { round } = router(design, meshes);
  for (let n = 0; n < rounds; n++) {
    const best = round(n).layouts[0];
    if (best) return best;
  }
  return null;
}

describe.each(PROBLEMS)('%s/%s', (folder, name) => {
  const { design, meshes } = loadLayout(folder, name);
  const laid = firstLaid(design, meshes);

  test('is laid within a few rounds, and every rule holds', () => {
    expect(laid).not.toBeNull();
    expect(check(laid!.design, meshes).problems).toEqual([]);
  });

  test('all runners of a group have one length to 0.001 mm', () => {
    for (const { runner, lengthInHead, centerline } of resolveHeader(laid!.design).runners) {
      const mates = laid!.report.groups.find((g) => g.id === runner.group)!;
      const asked = design.groups[runner.group!]!.length ?? mates.mean;
      expect(Math.abs(lengthInHead + centerline!.length - asked)).toBeLessThan(1e-3);
    }
  });

  test('nothing but lines, inlets and places of movable collectors is changed', () => {
    const { runners, merges, ...rest } = laid!.design;
    const { runners: asked, merges: given, ...same } = design;
    expect(rest).toEqual(same);
    for (const [i, { points: _points, radii: _radii, to, ...runner }] of runners.entries()) {
      const { to: wanted, ...before } = asked[i]!;
      expect(runner).toEqual(before);
      expect({ ...to, ...wanted }).toEqual(to);
    }
    for (const [i, merge] of merges.entries()) if (!given[i]!.placement) expect(merge).toEqual(given[i]);
  });
});

describe('a round', () => {
  const { design, meshes } = loadLayout('public', 'p26-medium');

  test('depends on the seed and its number alone', () => {
    const one = router(design, meshes, { seed: 5 });
    const other = router(design, meshes, { seed: 5 });
    const later = [2, 0, 1].map((n) => other.round(n));
    expect(one.round(0)).toEqual(later[1]);
    expect(one.round(1)).toEqual(later[2]);
    expect(one.round(2)).toEqual(later[0]);
  });

  test('tells of layouts as it finds them, better ones after worse, and ends with the best', () => {
    const seen: Layout[] = [];
    const { layouts } = router(design, meshes).round(1, (layout) => seen.push(layout));
    expect(seen.length).toBeGreaterThan(0);
    expect(seen.at(-1)).toEqual(layouts[0]);
    for (const [i, layout] of seen.entries()) {
      expect(layout.report.ok).toBe(true);
      if (i > 0) expect([layout.bends, layout.angle]).not.toEqual([seen[i - 1]!.bends, seen[i - 1]!.angle]);
      if (i > 0) expect(layout.bends).toBeLessThanOrEqual(seen[i - 1]!.bends);
    }
  });

  test('ends when it is told to, in the middle', () => {
    let asked = 0;
    router(design, meshes).round(0, undefined, () => ++asked > 3);
    const whole = { asked: 0 };
    router(design, meshes).round(0, undefined, () => {
      whole.asked++;
      return false;
    });
    expect(asked).toBeLessThan(whole.asked + 4);
  });

  test('comes to its nearest miss and says what fails where the length asked is far too short', () => {
    const short: Design = { ...design, groups: { primaries: { length: 150, tolerance: 1 } } };
    const { layouts, attempt } = router(short, meshes).round(0);
    expect(layouts).toEqual([]);
    expect(attempt!.report.ok).toBe(false);
    expect(attempt!.report.problems.length).toBeGreaterThan(0);
  });
});

describe('what is not to be touched', () => {
  const { design } = loadLayout('classic', 'c6-i3-3-1');
  const whole = firstLaid(design, NO_MESHES)!.design;

  test('a locked runner stays to the last digit, and the others are laid round it', () => {
    const locked = { ...whole, runners: whole.runners.map((r, i) => ({ ...r, locked: i === 0 })) };
    const laid = firstLaid(locked, NO_MESHES);
    expect(laid).not.toBeNull();
    expect(laid!.design.runners[0]).toEqual(locked.runners[0]);
    expect(laid!.report.ok).toBe(true);
  });

  test('inlets that are given are kept', () => {
    const inlets = [3, 1, 2];
    const pinned = {
      ...design,
      runners: design.runners.map((r, i) => ({ ...r, to: { ...r.to, inlet: inlets[i]! } })),
    };
    const laid = firstLaid(pinned, NO_MESHES, 12);
    expect(laid).not.toBeNull();
    expect(laid!.design.runners.map((r) => r.to.inlet)).toEqual(inlets);
  });
});
