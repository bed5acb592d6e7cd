/**
 * One shape for each runner so that all of them have room together: runner by runner, keeping the best few dozen
 * partial choices. Deterministic.
 */
import { crowding, type Line } from './crowding';
import type { Shape } from './shapes';

export type Option = {
  /** From 1, of the merge that its line enters. */
  readonly inlet: number;
  readonly shape: Shape;
  readonly line: Line;
  /** What it costs by itself: bends, turning, reaching far out. */
  readonly cost: number;
};

export type Choice = { readonly picks: readonly number[]; readonly cost: number };

const WIDTH = 40;

/**
 * @param options of each runner, cheapest first
 * @param gap least allowed between tubes
 * @returns choices, best first; empty where a runner has no option or the inlets run out
 */
export function choose(options: readonly (readonly Option[])[], gap: number): Choice[] {
  const known = new Map<number, number>();
  const pair = (i: number, a: number, j: number, b: number): number => {
    const key = ((i * LARGEST + a) * LARGEST + j) * LARGEST + b;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = crowding(options[i]![a]!.line, options[j]![b]!.line, gap);
    known.set(key, found);
    return found;
  };
  let states: Choice[] = [{ picks: [], cost: 0 }];
  for (const [i, own] of options.entries()) {
    const next: Choice[] = [];
    let worst = Number.POSITIVE_INFINITY;
    for (const { picks, cost } of states) {
      for (const [a, option] of own.entries()) {
        let sum = cost + option.cost;
        if (sum >= worst) break;
        for (let j = 0; j < i && sum < worst; j++) {
          const other = options[j]![picks[j]!]!;
          const taken = other.inlet === option.inlet && other.line.merge === option.line.merge;
          sum = taken ? Number.POSITIVE_INFINITY : sum + pair(j, picks[j]!, i, a);
        }
        if (sum >= worst || !Number.isFinite(sum)) continue;
        next.push({ picks: [...picks, a], cost: sum });
        if (next.length < 2 * WIDTH) continue;
        next.sort((p, q) => p.cost - q.cost);
        next.length = WIDTH;
        worst = next.at(-1)!.cost;
      }
    }
    states = next.sort((p, q) => p.cost - q.cost).slice(0, WIDTH);
  }
  return states;
}

/** More options than any runner has: keeps the keys of pairs apart, within exact whole numbers. */
const LARGEST = 2000;

/** The best, and the best of those that differ from all before in at least a third of the runners. */
export function diverse(choices: readonly Choice[], most: number): Choice[] {
  const kept: Choice[] = [];
  for (const choice of choices) {
    if (kept.length === most) break;
    const apart = (other: Choice): number => choice.picks.filter((p, i) => p !== other.picks[i]).length;
    if (kept.every((other) => 3 * apart(other) >= choice.picks.length)) kept.push(choice);
  }
  return kept;
}
