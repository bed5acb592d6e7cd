/** Lines that are drawn keep their character: nearest first, as many bends, the same way round; what has no line is fitted in. */
import { describe, expect, it } from 'vitest';
import { bends } from '../../../geometry/curve/bends';
import { centerline } from '../../../geometry/curve/centerline';
import { resolveHeader } from '../../../geometry/header/resolve';
import { randomNumbers } from '../../../geometry/layout/random';
import { FEASIBLE, type Settled } from '../../../geometry/route/drawing';
import { kept, type Leeway } from '../../../geometry/route/keep';
import { measuredLayout } from '../../../geometry/route/layout';
import { router } from '../../../geometry/route/router';
import { taskOf } from '../../../geometry/route/task';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { loadLayout } from '../../layouts/load';

const never = () => false;
const keep = (design: Design, leeway: Leeway = {}, seed = 1): Settled | null =>
  kept(taskOf(design, new Map(), true), randomNumbers(seed), never, leeway);
const holds = (found: Settled | null): Design => {
  expect(found!.miss).toBeLessThanOrEqual(FEASIBLE);
  expect(measuredLayout(found!.design, new Map()).report.problems).toEqual([]);
  return found!.design;
};
const bendsOf = (design: Design): number[] =>
  resolveHeader(design).runners.map((r) => bends(centerline(r.centerline!.points, r.centerline!.radii)).length);
/** The farthest that any point moved; points must be as many. */
const moved = (a: Design, b: Design): number =>
  Math.max(
    ...a.runners.flatMap((r, i) => {
      expect(b.runners[i]!.points!.length).toBe(r.points!.length);
      return r.points!.map((p, k) => Math.hypot(...p.map((x, axis) => x - b.runners[i]!.points![k]![axis]!)));
    }),
  );
const shifted = (design: Design, by: Vec3): Design => ({
  ...design,
  merges: design.merges.map((m) => ({ ...m, position: m.position.map((x, k) => x + by[k]!) as unknown as Vec3 })),
});

const four = loadLayout('known', 'c1-i4-4-1-rear-down').design;

describe('the nearest', () => {
  it('of a layout that holds is itself', () => {
    expect(moved(holds(keep(four)), four)).toBeLessThan(0.5);
  });
  it.each(['c1-i4-4-1-rear-down', 'c2-i4-4-2-1', 'p01-easy', 'p13-hard'])(
    'follows merges that have moved: %s',
    (name) => {
      const { design } = loadLayout('known', name);
      const found = holds(keep(shifted(design, [12, -10, -18])));
      expect(bendsOf(found)).toEqual(bendsOf(design));
      expect(found.runners.map((r) => r.to.inlet)).toEqual(design.runners.map((r) => r.to.inlet));
      expect(moved(found, design)).toBeLessThan(120);
    },
  );
  it('goes round what has come into the way, and the others hardly move', () => {
    const rod = rodThrough(four, 0);
    expect(measuredLayout(rod, new Map()).report.problems.map((p) => p.rule)).toContain('surroundings');
    const found = holds(keep(rod));
    expect(bendsOf(found)).toEqual(bendsOf(four));
    expect(moved(found, four)).toBeLessThan(90);
  });
  it('gives the same bytes twice', () => {
    const drawn = shifted(four, [20, 15, 5]);
    expect(JSON.stringify(keep(drawn))).toBe(JSON.stringify(keep(drawn)));
  });
  it('leaves locked runners as they are', () => {
    const rod = rodThrough(four, 0);
    const design = { ...rod, runners: rod.runners.map((r, i) => (i === 2 ? { ...r, locked: true } : r)) };
    expect(holds(keep(design)).runners[2]!.points).toEqual(four.runners[2]!.points);
    expect(holds(keep(rod)).runners[2]!.points).not.toEqual(four.runners[2]!.points);
  });
});

/** A rod that ends in the middle of a runner's tube, from above. */
function rodThrough(design: Design, runner: number): Design {
  const { points } = resolveHeader(design).runners[runner]!.centerline!;
  const [p, q] = [points[1]!, points[2]!];
  const middle = p.map((x, k) => (x + q[k]!) / 2) as unknown as Vec3;
  const tip: Vec3 = [middle[0], middle[1] + 12, middle[2]];
  const rod = {
    id: 'rod',
    shape: 'capsule',
    a: tip,
    b: [tip[0], tip[1] + 60, tip[2]],
    radius: 8,
    clearance: 4,
  } as const;
  return { ...design, surroundings: [...(design.surroundings ?? []), rod] };
}

describe('variants', () => {
  it('go the same way with as many bends, seeds 1 to 3', () => {
    for (const seed of [1, 2, 3]) expect(bendsOf(holds(keep(four, { size: 60 }, seed)))).toEqual(bendsOf(four));
  });
  it('may have a bend more where as many do not reach', () => {
    const { design } = loadLayout('known', 'p06-medium');
    const far = shifted(design, [-38.2, -11.4, 2.8]);
    expect(keep(far)!.miss).toBeGreaterThan(FEASIBLE);
    const found = holds(keep(far, { size: 20, spare: 1 }));
    const more = bendsOf(found).map((n, i) => n - bendsOf(design)[i]!);
    expect(Math.max(...more)).toBe(1);
    expect(Math.min(...more)).toBe(0);
  });
});

describe('what has no line', () => {
  const bare = (design: Design, which: (i: number) => boolean): Design => ({
    ...design,
    runners: design.runners.map((r, i) => {
      if (!which(i)) return r;
      const { points: _points, radii: _radii, to, ...rest } = r;
      return { ...rest, to: { merge: to.merge } };
    }),
  });
  it('is fitted among the others', () => {
    const found = holds(keep(bare(four, (i) => i === 2)));
    expect(found.runners[2]!.to.inlet).toBe(four.runners[2]!.to.inlet);
    const [own, known] = [found, four].map((d) => ({ ...d, runners: d.runners.filter((_, i) => i !== 2) }));
    expect(bendsOf(own!)).toEqual(bendsOf(known!));
  });
  it('is nothing to keep where no runner has one', () => {
    expect(keep(bare(four, () => true))).toBeNull();
  });
});

describe('the router', () => {
  it('keeps what is drawn where it is asked to', () => {
    const drawn = shifted(four, [12, -10, -18]);
    const seen: number[] = [];
    const { layouts } = router(drawn, new Map(), { keepsShape: true }).round(0, (l) => seen.push(l.bends));
    expect(layouts[0]!.report.problems).toEqual([]);
    expect(moved(layouts[0]!.design, four)).toBeLessThan(60);
    expect(seen).toEqual([layouts[0]!.bends]);
  });
});
