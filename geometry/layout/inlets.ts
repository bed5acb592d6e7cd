/** Gives every routed runner without an inlet the free inlet of its merge that its drawn end is nearest to. */
import type { Design } from '../../shared/design/types';
import { resolveHeader } from '../header/resolve';
import { distance } from '../vector';
import { cheapest } from './cheapest';

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
    const costs = runners.map((r) => free.map((k) => distance(r.points!.at(-1)!, inlets[k - 1]!.position)));
    for (const [i, k] of cheapest(costs).entries()) chosen.set(runners[i]!.id, free[k]!);
  }
  return {
    ...design,
    runners: design.runners.map((r) => (chosen.has(r.id) ? { ...r, to: { ...r.to, inlet: chosen.get(r.id)! } } : r)),
  };
}
