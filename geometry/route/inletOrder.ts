/** Which inlet each runner takes: pinned ones stay; the rest by what the way there would cost, with chance to look further. */
import { cheapest } from '../layout/cheapest';
import { angleBetween } from '../vector';
import { allowedOrders, type MergeOrders } from './firingOrder';
import { endOf, type Stage, startOf } from './stage';
import type { Task } from './task';

/**
 * @param costs of each runner at each inlet
 * @param orders where only some ways of giving out inlets are allowed: of merges that it names the cheapest of these, if any
 * @returns inlets from 1, by runner
 */
export function assigned(
  task: Task,
  costs: readonly (readonly number[])[],
  orders: readonly MergeOrders[] = [],
): number[] {
  const chosen = task.runners.map((r) => r.pinnedInlet ?? 0);
  for (const merge of task.design.merges) {
    const allowed = orders.find((o) => o.merge === merge.id);
    if (allowed && allowed.orders.length > 0) {
      const cost = (way: readonly number[]): number =>
        way.reduce((sum, k, i) => sum + costs[allowed.runners[i]!]![k - 1]!, 0);
      const best = allowed.orders.reduce((least, way) => (cost(way) < cost(least) ? way : least));
      for (const [i, k] of best.entries()) chosen[allowed.runners[i]!] = k;
      continue;
    }
    const open = task.runners.filter((r) => r.merge === merge.id && r.pinnedInlet === null);
    const taken = new Set(task.runners.filter((r) => r.merge === merge.id).map((r) => r.pinnedInlet));
    const free = Array.from({ length: merge.inlets }, (_, i) => i + 1).filter((k) => !taken.has(k));
    const own = open.map((r) => free.map((k) => costs[r.index]![k - 1]!));
    for (const [i, k] of cheapest(own).entries()) chosen[open[i]!.index] = free[k]!;
  }
  return chosen;
}

/** What a way must turn, radians, may be outweighed by chance up to this much. */
const HEAT = 2;

/**
 * The task with inlets given out in firing order, as if they were pinned: so that one round's search need not know of it.
 * Merges at which given inlets contradict the order keep their open ones open.
 * @param costs of each runner at each inlet, radians of turning or the like
 */
export function pinnedByOrder(task: Task, costs: readonly (readonly number[])[], random: () => number): Task {
  const orders = allowedOrders(task.design);
  const heat = HEAT * random();
  const shaken = costs.map((row) => row.map((cost) => cost + heat * random()));
  const inlets = assigned(task, shaken, orders);
  const ordered = new Set(orders.filter((o) => o.orders.length > 0).map((o) => o.merge));
  const runners = task.runners.map((r) => (ordered.has(r.merge) ? { ...r, pinnedInlet: inlets[r.index]! } : r));
  return { ...task, runners };
}

/** The least that each runner must turn to each inlet, radians. */
export function leastTurns(task: Task, stage: Stage): number[][] {
  return task.runners.map((r) => {
    const start = startOf(stage, r);
    return stage.header.merges
      .get(r.merge)!
      .inlets.map((_, i) => angleBetween(start.direction, endOf(stage, r, i + 1).direction));
  });
}
