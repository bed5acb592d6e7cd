/**
 * One shape for each runner, inlets and all, so that together they have room: local search over shapes that are known to
 * hold by themselves, with changes of one runner and exchanges of inlets, from several beginnings.
 */
import { shuffled } from './choose';
import { crowding, crowdingAmong } from './crowd';
import type { Line } from './line';
import type { Sketch } from './sketch';
import type { RunnerTask } from './task';

export type Combination = { readonly sketches: readonly Sketch[]; readonly cost: number };

export type Weights = {
  /** Of a bend more, mm² of crowding. */
  readonly bend: number;
  /** Of a radian of turning. */
  readonly turn: number;
  /** How much chance may outweigh cost. */
  readonly noise: number;
};

const SWEEPS = 8;
const NOT_AT_ALL = 1e9;

/** Crowding of pairs, known once it has been asked. */
export type Crowds = (a: Sketch, b: Sketch) => number;

export function crowds(gap: number): Crowds {
  const known = new WeakMap<Sketch, WeakMap<Sketch, number>>();
  return (a, b) => {
    let own = known.get(a);
    if (!own) {
      own = new WeakMap();
      known.set(a, own);
    }
    let cost = own.get(b);
    if (cost === undefined) {
      cost = crowding(a.line, b.line, gap);
      own.set(b, cost);
      const other = known.get(b) ?? new WeakMap();
      other.set(a, cost);
      known.set(b, other);
    }
    return cost;
  };
}

/**
 * @param runners those that are to be laid
 * @param options of each, into all inlets it may take
 * @param still lines that stay where they are
 * @returns the best found from each beginning, cheapest first; empty where some runner is left without an inlet
 */
export function combinations(
  runners: readonly RunnerTask[],
  options: readonly (readonly Sketch[])[],
  still: readonly Line[],
  gap: number,
  crowd: Crowds,
  { bend, turn, noise }: Weights,
  beginnings: number,
  random: () => number,
): Combination[] {
  const own = options.map((list) =>
    list.map((s) => bend * (s.bends - 2) + turn * s.turned + crowdingAmong(s.line, still, gap)),
  );
  const found: Combination[] = [];
  for (let k = 0; k < beginnings; k++) {
    const shaken = own.map((costs) => costs.map((c) => c + noise * random()));
    const picks = settledPicks(runners, options, shaken, crowd, random);
    if (!picks) continue;
    const sketches = picks.map((pick, i) => options[i]![pick]!);
    let cost = 0;
    for (let i = 0; i < picks.length; i++) {
      cost += own[i]![picks[i]!]!;
      for (let j = 0; j < i; j++) cost += crowd(sketches[i]!, sketches[j]!);
    }
    if (found.every((f) => f.sketches.some((s, i) => s !== sketches[i]))) found.push({ sketches, cost });
  }
  return found.sort((a, b) => a.cost - b.cost);
}

function settledPicks(
  runners: readonly RunnerTask[],
  options: readonly (readonly Sketch[])[],
  own: readonly (readonly number[])[],
  crowd: Crowds,
  random: () => number,
): number[] | null {
  const picks = runners.map(() => -1);
  const order = shuffled(runners.length, random);
  const takenBy = (i: number, inlet: number): number =>
    picks.findIndex((pick, j) => {
      if (j === i || pick < 0 || runners[j]!.merge !== runners[i]!.merge) return false;
      return options[j]![pick]!.inlet === inlet;
    });
  /** The best option of runner i into `inlet` (0: any that is free), without regard to those in `but`. */
  const best = (i: number, inlet: number, but: number): { pick: number; cost: number } => {
    let pick = -1;
    let least = NOT_AT_ALL;
    for (const [a, s] of options[i]!.entries()) {
      if (inlet > 0 ? s.inlet !== inlet : takenBy(i, s.inlet) >= 0) continue;
      let cost = own[i]![a]!;
      for (let j = 0; j < picks.length && cost < least; j++)
        if (j !== i && j !== but && picks[j]! >= 0) cost += crowd(s, options[j]![picks[j]!]!);
      if (cost < least) {
        least = cost;
        pick = a;
      }
    }
    return { pick, cost: least };
  };
  const now = (i: number, but: number): number => {
    const s = options[i]![picks[i]!]!;
    let cost = own[i]![picks[i]!]!;
    for (let j = 0; j < picks.length; j++)
      if (j !== i && j !== but && picks[j]! >= 0) cost += crowd(s, options[j]![picks[j]!]!);
    return cost;
  };
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let changed = false;
    for (const i of order) {
      const { pick } = best(i, 0, -1);
      if (pick < 0 && picks[i]! < 0) continue;
      if (pick >= 0 && pick !== picks[i]) {
        picks[i] = pick;
        changed = true;
      }
    }
    for (const i of order)
      for (const j of order) {
        if (i >= j || runners[i]!.merge !== runners[j]!.merge) continue;
        if (exchanged(i, j)) changed = true;
      }
    if (!changed) break;
  }
  return picks.every((pick) => pick >= 0) ? picks : null;

  /** Whether two runners of one merge are better off with each other's inlets; one may have none yet. */
  function exchanged(i: number, j: number): boolean {
    if (picks[i]! < 0 || picks[j]! < 0) return false;
    const [mine, yours] = [options[i]![picks[i]!]!, options[j]![picks[j]!]!];
    const before = now(i, j) + now(j, i) + crowd(mine, yours);
    const a = best(i, yours.inlet, j);
    const b = best(j, mine.inlet, i);
    if (a.pick < 0 || b.pick < 0) return false;
    const after = a.cost + b.cost + crowd(options[i]![a.pick]!, options[j]![b.pick]!);
    if (after >= before - 1e-6) return false;
    picks[i] = a.pick;
    picks[j] = b.pick;
    return true;
  }
}
