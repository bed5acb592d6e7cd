/** One try at a header: inlets, shapes that have room together, all settled jointly, and what is stuck laid again. */
import type { Design } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { choose } from './choose';
import type { Barrier } from './crowd';
import { FEASIBLE, type Settled, settled, withSketches } from './drawing';
import { assigned, inletCosts } from './inletOrder';
import { type Line, lineOf } from './line';
import { BEND_COST, type Draws, pool } from './pool';
import { pathOf, type Sketch } from './sketch';
import { barriersOf, bundlesOf, endOf, type Stage, stageOf, startOf } from './stage';
import type { RunnerTask, Task } from './task';

const DRAWS: Draws = { ofPoints: [24, 24, 10], kept: 12 };
const REPAIRS = 12;
const STEPS = 40;

export const stats = { relax: 0, tries: 0, repairs: 0 };

export function lay(task: Task, n: number, random: () => number, stopped: () => boolean): Settled | null {
  const stage = stageOf(task, n === 0 ? 0 : random(), random);
  const open = task.runners.filter((r) => !r.locked);
  const lengths = lengthsOf(task, stage, n === 0 ? 1.05 : 1 + 0.35 * random() ** 1.5, random);
  const bendCost = BEND_COST * (n === 0 ? 1 : 2 ** (1 - 3 * random()));
  const costs = task.runners.map((r) => (r.pinnedInlet !== null ? [] : inletCosts(stage, r, lengths(r), random)));
  const inlets = assigned(task, costs, n === 0 ? 0 : 3 * random(), random);
  const gap = task.header.tubeToTube;
  const still = task.runners.filter((r) => r.locked).map((r) => lineIn(stage.design, task, r));
  const barriers = new Map<number, Barrier[]>(open.map((r) => [r.index, barriersOf(task, stage, r)]));
  const pools = open.map((r) =>
    pool(stage, r, inlets[r.index]!, barriers.get(r.index)!, lengths(r), DRAWS, bendCost, random),
  );
  if (pools.some((p) => p.length === 0)) return null;
  const chosen = choose(pools, still, gap, bendCost, random);
  const sketches: (Sketch | null)[] = task.runners.map(() => null);
  for (const [i, r] of open.entries()) sketches[r.index] = chosen[i]!;
  stats.tries++;
  stats.relax++;
  let now = settled(withSketches(stage.design, task, sketches), task, { steps: STEPS, stopped });
  for (let repair = 0; repair < REPAIRS && now.miss > FEASIBLE && !stopped(); repair++) {
    stats.repairs++;
    const next = repaired(task, now, lengths, bendCost * 0.5 ** (repair / 3), random, stopped);
    if (next && next.cost < now.cost * (1 + 0.3 * random())) now = next;
  }
  return now;
}

function repaired(
  task: Task,
  now: Settled,
  lengths: (r: RunnerTask) => number | null,
  bendCost: number,
  random: () => number,
  stopped: () => boolean,
): Settled | null {
  const header = resolveHeader(now.design);
  const stage: Stage = { design: now.design, header };
  const open = task.runners.filter((r) => !r.locked);
  const worst = drawn(open, (r) => now.blame[r.index]!, random);
  const out = [worst];
  const inlets = new Map(open.map((r) => [r.index, now.design.runners[r.index]!.to.inlet!]));
  const kind = random();
  if (kind < 0.3) {
    const partners = open.filter((r) => r !== worst && r.merge === worst.merge && r.pinnedInlet === null);
    if (partners.length > 0 && worst.pinnedInlet === null) {
      const other = partners[Math.floor(random() * partners.length)]!;
      const mine = inlets.get(worst.index)!;
      inlets.set(worst.index, inlets.get(other.index)!);
      inlets.set(other.index, mine);
      out.push(other);
    }
  } else if (kind < 0.55 && open.length > 1) {
    out.push(
      drawn(
        open.filter((r) => r !== worst),
        (r) => now.blame[r.index]! + 1e-6,
        random,
      ),
    );
  }
  const still = task.runners.filter((r) => !out.includes(r)).map((r) => lineIn(now.design, task, r));
  const lengthNow = (r: RunnerTask): number | null => {
    const mates = header.runners.filter((m, i) => m.runner.group === r.group && i !== r.index && m.centerline);
    if (r.group === null || mates.length === 0) return lengths(r);
    const given = header.groups.get(r.group)?.length;
    const mean = mates.reduce((sum, m) => sum + m.lengthInHead + m.centerline!.length, 0) / mates.length;
    return (given ?? mean) - r.resolved.lengthInHead;
  };
  const pools = out.map((r) =>
    pool(stage, r, inlets.get(r.index)!, barriersOf(task, stage, r), lengthNow(r), { ofPoints: [24, 36, 20], kept: 40 }, bendCost, random),
  );
  if (pools.some((p) => p.length === 0)) return null;
  const chosen = choose(pools, still, task.header.tubeToTube, bendCost, random);
  const sketches: (Sketch | null)[] = task.runners.map(() => null);
  for (const [i, r] of out.entries()) sketches[r.index] = chosen[i]!;
  stats.relax++;
  return settled(withSketches(now.design, task, sketches), task, { steps: STEPS, stopped });
}

/** One of them, by chance in proportion to its weight. */
function drawn<T>(from: readonly T[], weight: (one: T) => number, random: () => number): T {
  const total = from.reduce((sum, one) => sum + weight(one), 0);
  let left = random() * total;
  for (const one of from) {
    left -= weight(one);
    if (left <= 0) return one;
  }
  return from.at(-1)!;
}

function lineIn(design: Design, task: Task, r: RunnerTask): Line {
  const runner = design.runners[r.index]!;
  const header = resolveHeader(design);
  const stage = { design, header };
  const line = header.runners[r.index]!.centerline!;
  const path = pathOf(startOf(stage, r), endOf(stage, r, runner.to.inlet!), line.points, line.radii);
  return lineOf(path, r, bundlesOf(stage, r));
}

/** Centerline length that each runner is drawn to: its group's, or, where that is open, a little above the shortest. */
function lengthsOf(task: Task, stage: Stage, stretch: number, random: () => number): (r: RunnerTask) => number | null {
  const chosen = new Map<string, number>();
  for (const [id, group] of task.header.groups) {
    if (group.length !== null) {
      chosen.set(id, group.length);
      continue;
    }
    let most = 0;
    for (const r of task.runners) {
      if (r.group !== id) continue;
      const { centerline } = r.resolved;
      if (r.locked && centerline) {
        most = r.resolved.lengthInHead + centerline.length;
        break;
      }
      const { inlets } = stage.header.merges.get(r.merge)!;
      let least = Infinity;
      for (let k = 1; k <= inlets.length; k++) {
        if (r.pinnedInlet !== null && r.pinnedInlet !== k) continue;
        for (const s of pool(stage, r, k, barriersOf(task, stage, r), null, { ofPoints: [16], kept: 6 }, 0, random))
          if (s.blocked < 400) least = Math.min(least, s.length);
      }
      if (least < Infinity) most = Math.max(most, r.resolved.lengthInHead + least * stretch);
    }
    if (most > 0) chosen.set(id, most);
  }
  return (r) => {
    const length = r.group === null ? undefined : chosen.get(r.group);
    return length === undefined ? null : length - r.resolved.lengthInHead;
  };
}
