/** One shape for each runner so that all have room together: greedy in a random order, then each anew until none changes. */
import { crowding, crowdingAmong } from './crowd';
import type { Line } from './line';
import type { Sketch } from './sketch';

const SWEEPS = 5;
/** What a radian of turning is worth, mm² of crowding. */
export const TURN_COST = 60;

const costOf = (s: Sketch, bendCost: number): number => s.blocked + bendCost * (s.bends - 2) + TURN_COST * s.turned;

/**
 * @param pools of each runner that is to be laid, never empty
 * @param still lines that stay where they are
 * @param noise how much chance may outweigh cost, mm²
 * @returns of each pool the one chosen
 */
export function choose(
  pools: readonly (readonly Sketch[])[],
  still: readonly Line[],
  gap: number,
  bendCost: number,
  noise: number,
  random: () => number,
): Sketch[] {
  const known = new Map<number, number>();
  const own = pools.map((pool) =>
    pool.map((s) => costOf(s, bendCost) + noise * random() + crowdingAmong(s.line, still, gap)),
  );
  const pair = (i: number, a: number, j: number, b: number): number => {
    const key = ((i * 64 + j) * 256 + a) * 256 + b;
    let cost = known.get(key);
    if (cost === undefined) {
      cost = crowding(pools[i]![a]!.line, pools[j]![b]!.line, gap);
      known.set(key, cost);
    }
    return cost;
  };
  const order = shuffled(pools.length, random);
  const picks = pools.map(() => -1);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let changed = false;
    for (const i of order) {
      let best = -1;
      let least = Infinity;
      for (let a = 0; a < pools[i]!.length; a++) {
        let cost = own[i]![a]!;
        for (let j = 0; j < pools.length && cost < least; j++) {
          if (j === i || picks[j]! < 0) continue;
          cost += i < j ? pair(i, a, j, picks[j]!) : pair(j, picks[j]!, i, a);
        }
        if (cost < least) {
          least = cost;
          best = a;
        }
      }
      if (best !== picks[i]) changed = true;
      picks[i] = best;
    }
    if (!changed) break;
  }
  return picks.map((pick, i) => pools[i]![pick]!);
}

export function shuffled(count: number, random: () => number): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

/** One of them, by chance in proportion to its weight. */
export function byWeight<T>(from: readonly T[], weight: (one: T) => number, random: () => number): T {
  const total = from.reduce((sum, one) => sum + weight(one), 0);
  let left = random() * total;
  for (const one of from) {
    left -= weight(one);
    if (left <= 0) return one;
  }
  return from.at(-1)!;
}
