/** Which inlet each runner takes: pinned ones stay; the rest by what the way there would cost, with chance to look further. */
import { propose } from './propose';
import { endOf, type Stage, startOf } from './stage';
import type { RunnerTask, Task } from './task';
import { pathOf } from './sketch';

const DRAWS = 10;

/** What it would cost to lead runner r to each inlet of its merge, in radians of turning; by the best of a few draws. */
export function inletCosts(stage: Stage, r: RunnerTask, length: number | null, random: () => number): number[] {
  const start = startOf(stage, r);
  const { inlets } = stage.header.merges.get(r.merge)!;
  return inlets.map((_, i) => {
    const end = endOf(stage, r, i + 1);
    let least = 12;
    for (let k = 0; k < DRAWS; k++) {
      const drawn = propose(r, start, end, 2, length, random);
      if (!drawn) continue;
      const path = pathOf(start, end, drawn.points, drawn.radii);
      const short = path.straights.reduce((sum, s) => sum + Math.max(0, -s), 0);
      least = Math.min(least, path.turns.reduce((sum, t) => sum + t, 0) + short / 20);
    }
    return least;
  });
}

/**
 * @param costs of each runner at each inlet
 * @param heat how much chance may outweigh cost, radians
 * @returns inlets from 1, by runner
 */
export function assigned(task: Task, costs: readonly (readonly number[])[], heat: number, random: () => number): number[] {
  const chosen = task.runners.map((r) => r.pinnedInlet ?? 0);
  for (const merge of task.design.merges) {
    const open = task.runners.filter((r) => r.merge === merge.id && r.pinnedInlet === null);
    const taken = new Set(task.runners.filter((r) => r.merge === merge.id).map((r) => r.pinnedInlet));
    const free = Array.from({ length: merge.inlets }, (_, i) => i + 1).filter((k) => !taken.has(k));
    const noisy = open.map((r) => free.map((k) => costs[r.index]![k - 1]! + heat * random()));
    for (const [i, k] of cheapest(noisy).entries()) chosen[open[i]!.index] = free[k]!;
  }
  return chosen;
}

/** Least total cost of giving each row a column of its own, by trying all with a bound; merges have few inlets. */
export function cheapest(costs: readonly (readonly number[])[]): number[] {
  let best: number[] = [];
  let bound = Infinity;
  const least = costs.map((row) => Math.min(...row));
  const after = least.map((_, i) => least.slice(i + 1).reduce((sum, c) => sum + c, 0));
  const extend = (order: number[], sum: number): void => {
    const row = costs[order.length];
    if (!row) {
      best = order;
      bound = sum;
      return;
    }
    for (const [k, cost] of row.entries())
      if (!order.includes(k) && sum + cost + after[order.length]! < bound) extend([...order, k], sum + cost);
  };
  extend([], 0);
  return best;
}
