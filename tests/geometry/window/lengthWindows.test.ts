/** Length windows against closed forms, against what is known to be buildable, and against themselves under change. */
import { describe, expect, test } from 'vitest';
import { check, lengthWindows, type RunnerWindow } from '../../../geometry';
import type { Design, Runner, Surrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { layoutNames, loadLayout } from '../../layouts/load';
import { random } from '../../random';
import { designOf } from './single';

const windowOf = (design: Design): RunnerWindow => lengthWindows(design).runners[0]!;
const bare = (design: Design): Design => ({
  ...design,
  runners: design.runners.map(({ points: _points, radii: _radii, ...r }): Runner => r),
});

describe('where there is one way only', () => {
  test('a straight tube', () => {
    const window = windowOf(designOf([0, 300, 0], [0, 1, 0], { maxBends: 0 }));
    expect([window.shortest, window.longest, window.unbounded]).toEqual([300, 300, false]);
  });

  test('one bend of a right angle', () => {
    const { shortest, longest } = windowOf(designOf([0, 200, -300], [0, 0, -1], { maxBends: 1 }));
    const length = 200 + 300 - 2 * 60 + (60 * Math.PI) / 2;
    expect(shortest).toBeCloseTo(length, 6);
    expect(longest).toBeCloseTo(length, 6);
  });

  test('one bend between ends whose rays do not meet: none', () => {
    const window = windowOf(designOf([50, 200, -300], [0, 0, -1], { maxBends: 1 }));
    expect(window).toMatchObject({ shortest: null, longest: null, unbounded: false });
  });
});

describe('two bends side by side', () => {
  // Both ends along +Y, 300 mm ahead and 200 mm aside, two equal bends of angle t: the outer straights stay as short as
  // they may where the bends are as far apart as they can be, so the shortest has both at their least.
  test('an offset as short as its end straights allow', () => {
    const { shortest } = windowOf(designOf([0, 500, -200], [0, 1, 0], { maxBends: 2 }));
    const ahead = 500 - 40;
    const aside = 200;
    // Straight s and angle t of the S: ahead = 2R sin t + s cos t, aside = 2R(1 − cos t) + s sin t.
    const length = (t: number): number => 2 * 60 * t + (aside - 120 * (1 - Math.cos(t))) / Math.sin(t);
    let [low, high] = [0.05, Math.PI / 2];
    for (let k = 0; k < 100; k++) {
      const t = (low + high) / 2;
      const s = (aside - 120 * (1 - Math.cos(t))) / Math.sin(t);
      if (120 * Math.sin(t) + s * Math.cos(t) > ahead) low = t;
      else high = t;
    }
    expect(shortest! - 40).toBeCloseTo(length(low), 2);
  });

  test('an offset between walls cannot grow: a corridor bounds it', () => {
    const walls: Surrounding[] = [-60, 260].flatMap((at, i): Surrounding[] => [
      { id: `x ${i}`, shape: 'box', min: [-500, -500, i ? at : at - 50], max: [500, 1000, i ? at + 50 : at] },
    ]);
    const sides: Surrounding[] = [-70, 70].map((at, i) => ({
      id: `y ${i}`,
      shape: 'box',
      min: [i ? at : at - 50, -500, -500],
      max: [i ? at + 50 : at, 1000, 500],
    }));
    const ends: Surrounding[] = [-60, 620].map((at, i) => ({
      id: `z ${i}`,
      shape: 'box',
      min: [-500, i ? at : at - 50, -500],
      max: [500, i ? at + 50 : at, 500],
    }));
    const design = designOf([0, 500, 200], [0, 1, 0], {}, [...walls, ...sides, ...ends]);
    const { shortest, longest, unbounded } = windowOf(design);
    expect(unbounded).toBe(false);
    expect(shortest!).toBeGreaterThan(Math.hypot(500, 200));
    expect(longest!).toBeGreaterThan(shortest! + 20);
    expect(windowOf({ ...design, surroundings: [] })).toMatchObject({ unbounded: true, longest: null });
  });
});

describe('under change', () => {
  const { design } = loadLayout('public', 'p07-medium');
  const usual = lengthWindows(design);

  test('the same design gives the same windows', () => {
    expect(lengthWindows(design)).toEqual(usual);
  });

  test('what lies in the head counts', () => {
    const longer = lengthWindows({
      ...design,
      ports: design.ports.map((p) => ({ ...p, lengthInHead: (p.lengthInHead ?? 0) + 50 })),
    });
    for (const [i, r] of longer.runners.entries()) expect(r.shortest!).toBeCloseTo(usual.runners[i]!.shortest! + 50, 1);
  });

  test('a free inlet is as short as the best of them pinned', () => {
    const free = windowOf({ ...design, runners: [{ ...design.runners[0]!, to: { merge: 'm1' } }] });
    const pinned = [1, 2, 3, 4].map(
      (inlet) => windowOf({ ...design, runners: [{ ...design.runners[0]!, to: { merge: 'm1', inlet } }] }).shortest!,
    );
    expect(free.shortest!).toBeCloseTo(Math.min(...pinned), 1);
    expect(pinned[free.inlet! - 1]).toBe(Math.min(...pinned));
  });

  test('a smaller die makes it no longer, nor does an empty bay', () => {
    for (const [i, tube] of Object.keys(design.tooling).entries()) {
      const tooling = { ...design.tooling, [tube]: { ...design.tooling[tube]!, otherRadii: [45] } };
      const smaller = lengthWindows({ ...design, tooling });
      expect(smaller.runners[i]!.shortest!).toBeLessThan(usual.runners[i]!.shortest! + 0.1);
    }
    const empty = lengthWindows({ ...design, surroundings: [] });
    for (const [i, r] of empty.runners.entries()) expect(r.shortest!).toBeLessThan(usual.runners[i]!.shortest! + 0.5);
  });

  test('a locked runner has the length it has', () => {
    const known = loadLayout('known', 'c6-i3-3-1').design;
    const locked = { ...known, runners: known.runners.map((r, i) => (i === 0 ? { ...r, locked: true } : r)) };
    const { runners, groups } = lengthWindows(locked);
    expect(runners[0]).toMatchObject({ locked: true, unbounded: false });
    expect(runners[0]!.longest).toBe(runners[0]!.shortest);
    expect(groups[0]).toMatchObject({ longest: runners[0]!.longest, longestBy: runners[0]!.id });
  });

  test('a port inside a surrounding has no way out', () => {
    const swallowed: Surrounding = { id: 'block', shape: 'box', min: [-100, -100, -100], max: [100, 150, 100] };
    expect(windowOf(designOf([0, 400, -200], [0, 1, 0], {}, [swallowed])).shortest).toBeNull();
  });

  test('a search that was cancelled answers at once, with what it has', () => {
    const { runners } = lengthWindows(design, new Map(), { cancelled: () => true });
    expect(runners.map((r) => r.shortest)).toEqual(design.runners.map(() => null));
  });

  test('a merge that may move makes runners shorter still', () => {
    const fixed = designOf([0, 500, -300], [0, 0, -1]);
    const within: [Vec3, Vec3] = [
      [-50, 350, -400],
      [50, 500, -250],
    ];
    const movable = { ...fixed, merges: fixed.merges.map((m) => ({ ...m, placement: { within, tilt: 10 } })) };
    expect(windowOf(movable).shortest!).toBeLessThan(windowOf(fixed).shortest! - 100);
  });
});

const loadLengths = (design: Design) => new Map(check(design).runners.map((r) => [r.id, r.length]));

describe('what is known to be buildable lies inside', () => {
  const names = layoutNames('known').filter((name) => !name.endsWith('-hard'));
  const hard = layoutNames('known').filter((name) => name.endsWith('-hard'));

  test.each(names)('%s, from nothing', (name) => {
    const known = loadLayout('known', name);
    const { runners } = lengthWindows(bare(known.design), known.meshes, { starts: 6 });
    const lengths = loadLengths(known.design);
    for (const r of runners) {
      expect(r.shortest, r.id).not.toBeNull();
      expect(r.shortest!, r.id).toBeLessThan(lengths.get(r.id)! + 0.05);
      expect(r.longest ?? Number.POSITIVE_INFINITY, r.id).toBeGreaterThan(lengths.get(r.id)! - 0.05);
    }
  });

  test('nine of ten runners in the crowded ones, from nothing', () => {
    let inside = 0;
    let all = 0;
    for (const name of hard.filter((_, i) => i % 4 === 0)) {
      const known = loadLayout('known', name);
      const lengths = loadLengths(known.design);
      for (const r of lengthWindows(bare(known.design), known.meshes).runners) {
        all++;
        const length = lengths.get(r.id)!;
        if (r.shortest !== null && r.shortest < length + 0.05 && (r.longest ?? length) > length - 0.05) inside++;
      }
    }
    expect(all).toBeGreaterThan(15);
    expect(inside / all).toBeGreaterThan(0.9);
  });

  test('all of them as they are drawn', () => {
    for (const name of hard.filter((_, i) => i % 7 === 1)) {
      const known = loadLayout('known', name);
      const lengths = loadLengths(known.design);
      for (const r of lengthWindows(known.design, known.meshes).runners) {
        expect(r.shortest!, `${name} ${r.id}`).toBeLessThan(lengths.get(r.id)! + 0.05);
        expect(r.longest ?? Number.POSITIVE_INFINITY, `${name} ${r.id}`).toBeGreaterThan(lengths.get(r.id)! - 0.05);
      }
    }
  });
});

test('a mirror image is as short, with seed 5', () => {
  const draw = random(5);
  for (let k = 0; k < 8; k++) {
    const [x, y, z] = [draw.between(-200, 200), draw.between(250, 500), draw.between(-400, -150)];
    const axis: Vec3 = [0, draw.between(-0.5, 1), -1];
    const design = designOf([x, y, z], axis);
    const mirrored = designOf([-x, y, z], axis);
    expect(windowOf(mirrored).shortest!).toBeCloseTo(windowOf(design).shortest!, 1);
  }
});
