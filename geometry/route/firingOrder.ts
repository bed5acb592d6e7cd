/**
 * Inlets in firing order: going round a ring of inlets, either way and from any beginning, or along a line of them, the
 * cylinders come as they fire. A runner that leaves a merge carries several cylinders; it counts as the one of them that
 * fires first, since from there on they come in turn with those of its neighbours. Inlets from 1.
 */
import type { Design, Merge, Runner } from '../../shared/design/types';

/** Every way that a merge's runners may take its inlets in firing order. */
export type MergeOrders = {
  readonly merge: string;
  /** Indices of its runners in the design. */
  readonly runners: readonly number[];
  /** The inlet of each of these; none where inlets that are given contradict the order. */
  readonly orders: readonly (readonly number[])[];
};

/** For each merge in the design's order; empty where the firing order is not known. */
export function allowedOrders(design: Design): MergeOrders[] {
  if (firingOrderUnknown(design) !== null) return [];
  const order = design.engine!.firingOrder!;
  return design.merges.map((merge) => {
    const indices = design.runners.flatMap((r, i) => (r.to.merge === merge.id ? [i] : []));
    const times = indices.map((i) => firstFiring(design, design.runners[i]!, order));
    const given = indices.map((i) => design.runners[i]!.to.inlet ?? null);
    const orders = waysRound(merge, times).filter((way) => way.every((k, i) => given[i] === null || given[i] === k));
    return { merge: merge.id, runners: indices, orders };
  });
}

/** Why nothing can be said of firing order, or which inlets that are given contradict it, as a sentence; null where all is well. */
export function firingOrderProblem(design: Design): string | null {
  const unknown = firingOrderUnknown(design);
  if (unknown !== null) return unknown;
  const bad = allowedOrders(design).find(({ orders }) => orders.length === 0);
  if (!bad) return null;
  const given = bad.runners.flatMap((i) => {
    const { id, to } = design.runners[i]!;
    return to.inlet === undefined ? [] : [`${id} at ${to.inlet}`];
  });
  return `Collector ${bad.merge}: the inlets given (${given.join(', ')}) do not follow the firing order ${design.engine!.firingOrder!.join('-')}; leave some of them open.`;
}

function firingOrderUnknown({ engine, ports, runners }: Design): string | null {
  const order = engine?.firingOrder;
  if (!order) return "Inlets cannot follow the firing order: the engine's firing order is not given.";
  const used = new Set(runners.flatMap(({ from }) => ('port' in from ? [from.port] : [])));
  const missing = ports.filter((p) => used.has(p.id) && !order.includes(p.cylinder)).map((p) => p.cylinder);
  if (missing.length === 0) return null;
  const named = [...new Set(missing)].join(', ');
  return `Inlets cannot follow the firing order ${order.join('-')}: cylinder ${named} is not in it.`;
}

/** When the first of the cylinders that a runner carries fires, as its place in the order. */
function firstFiring(design: Design, runner: Runner, order: readonly number[], seen: readonly string[] = []): number {
  const { from } = runner;
  if ('port' in from) return order.indexOf(design.ports.find((p) => p.id === from.port)!.cylinder);
  if (seen.includes(from.merge)) return Number.POSITIVE_INFINITY;
  const before = design.runners.filter((r) => r.to.merge === from.merge);
  return Math.min(...before.map((r) => firstFiring(design, r, order, [...seen, from.merge])));
}

/** The inlet of each of some runners, all ways in which their times come one after the other. */
function waysRound(merge: Merge, times: readonly number[]): number[][] {
  const inlets = Array.from({ length: merge.inlets }, (_, i) => i + 1);
  if (times.length > inlets.length) return [];
  const ways = new Map<string, number[]>();
  for (const sequence of sequences(times))
    for (const chosen of subsets(inlets, times.length))
      for (let turn = 0; turn < Math.max(1, chosen.length); turn++)
        for (const backward of [false, true]) {
          const way = times.map(() => 0);
          for (const [place, who] of sequence.entries()) {
            const at = (turn + (backward ? sequence.length - 1 - place : place)) % chosen.length;
            way[who] = chosen[at]!;
          }
          ways.set(way.join(), way);
        }
  return [...ways.values()];
}

/** Who comes after whom, by time; those of one cylinder in any order among themselves. */
function sequences(times: readonly number[], before: readonly number[] = []): number[][] {
  const left = times.map((_, i) => i).filter((i) => !before.includes(i));
  if (left.length === 0) return [[...before]];
  const next = Math.min(...left.map((i) => times[i]!));
  return left.filter((i) => times[i] === next).flatMap((i) => sequences(times, [...before, i]));
}

function subsets(from: readonly number[], size: number): number[][] {
  if (size === from.length) return [[...from]];
  if (size === 0 || from.length === 0) return size === 0 ? [[]] : [];
  const [first, ...rest] = from;
  return [...subsets(rest, size - 1).map((s) => [first!, ...s]), ...subsets(rest, size)];
}
