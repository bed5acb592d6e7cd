/** Gives every routed runner without an inlet the free inlet of its merge that its drawn end is nearest to. */
import type { Design, Runner } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { distance } from '../vector';

export function assignInlets(design: Design): Design {
  const open = design.runners.filter((r) => r.to.inlet === undefined && r.points);
  if (open.length === 0) return design;
  const header = resolveHeader(design);
  const chosen = new Map<string, number>();
  for (const id of new Set(open.map((r) => r.to.merge))) {
    const { inlets } = header.merges.get(id)!;
    const taken = new Set(design.runners.filter((r) => r.to.merge === id).map((r) => r.to.inlet));
    const free = inlets.map((_, i) => i + 1).filter((k) => !taken.has(k));
    const runners = open.filter((r) => r.to.merge === id);
    const cost = (r: Runner, k: number): number => distance(r.points!.at(-1)!, inlets[k - 1]!.position);
    for (const [i, k] of cheapest(runners, free, cost).entries()) chosen.set(runners[i]!.id, k);
  }
  return {
    ...design,
    runners: design.runners.map((r) => (chosen.has(r.id) ? { ...r, to: { ...r.to, inlet: chosen.get(r.id)! } } : r)),
  };
}

/** Least total cost by trying all orders with a bound; merges have few inlets. */
function cheapest(
  runners: readonly Runner[],
  free: readonly number[],
  cost: (r: Runner, k: number) => number,
): number[] {
  let best: number[] = [];
  let bound = Number.POSITIVE_INFINITY;
  const extend = (order: number[], sum: number): void => {
    if (sum >= bound) return;
    const r = runners[order.length];
    if (!r) {
      best = order;
      bound = sum;
      return;
    }
    for (const k of free) if (!order.includes(k)) extend([...order, k], sum + cost(r, k));
  };
  extend([], 0);
  return best;
}
