/** Which inlet each runner takes: pinned ones stay; the rest by what the way there would cost, with chance to look further. */
import type { Task } from './task';

/**
 * @param costs of each runner at each inlet
 * @returns inlets from 1, by runner
 */
export function assigned(task: Task, costs: readonly (readonly number[])[]): number[] {
  const chosen = task.runners.map((r) => r.pinnedInlet ?? 0);
  for (const merge of task.design.merges) {
    const open = task.runners.filter((r) => r.merge === merge.id && r.pinnedInlet === null);
    const taken = new Set(task.runners.filter((r) => r.merge === merge.id).map((r) => r.pinnedInlet));
    const free = Array.from({ length: merge.inlets }, (_, i) => i + 1).filter((k) => !taken.has(k));
    const own = open.map((r) => free.map((k) => costs[r.index]![k - 1]!));
    for (const [i, k] of cheapest(own).entries()) chosen[open[i]!.index] = free[k]!;
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
