/**
 * Where several kinds are on sale: how many of each could be bought, the cheapest numbers first. With these numbers given, whether
 * every piece can be had is asked in fractions; where it cannot, the worths that say so rule out most other numbers at once. The
 * first numbers that will do in whole are the best there are, and those before them are the proof.
 */
import type { cover } from './cover';
import type { Stock } from './fill';
import type { Taken } from './master';
import { type Kind, near, type Ruling, type Search } from './search';

const MANY = 20_000;

/** @param ask the search itself, for each numbers in turn */
export async function byNumbers(
  search: Search,
  wanted: readonly number[],
  kinds: readonly Kind[],
  ask: typeof cover,
): Promise<void> {
  const numbers = numbersBelow(search, kinds);
  if (!numbers) return;
  const rulings: Ruling[] = [...search.rulings];
  for (const { cost, limits } of numbers) {
    if (search.left() <= 0) return search.raise(cost);
    const ruledOut = rulings.some(
      ({ need, most }) => need > limits.reduce((sum, n, k) => sum + n * most[k]!, 0) + near(need),
    );
    if (ruledOut) continue;
    search.raise(cost);
    const given = await withNumbers(wanted, kinds, limits, search.left(), ask);
    if (given.taken) return search.offer(given.taken);
    if (!given.never) return;
    rulings.push(...given.rulings);
  }
  search.raise(search.value);
}

/** All numbers of lengths bought, of a total from the bound to below the best plan; null where they are too many. */
function numbersBelow({ bound, value }: Search, kinds: readonly Kind[]) {
  const found: { cost: number; limits: number[] }[] = [];
  const walk = (k: number, cost: number, limits: number[]): boolean => {
    if (cost >= value - near(value)) return true;
    if (k === kinds.length) {
      if (cost >= bound - near(bound)) found.push({ cost, limits });
      return found.length <= MANY;
    }
    const { limit, cost: each } = kinds[k]!;
    if (Number.isFinite(limit)) return walk(k + 1, cost, [...limits, limit]);
    for (let n = 0; cost + n * each < value - near(value); n++)
      if (!walk(k + 1, cost + n * each, [...limits, n])) return false;
    return true;
  };
  return walk(0, 0, []) ? found.sort((a, b) => a.cost - b.cost) : null;
}

/** Whether every piece comes out of so many lengths of each kind: what is left over costs one each. */
async function withNumbers(
  wanted: readonly number[],
  kinds: readonly Kind[],
  limits: readonly number[],
  seconds: number,
  ask: typeof cover,
) {
  const types = wanted.map((_, type) => type);
  const none: Stock = {
    room: 0,
    takes: types.map(() => Number.POSITIVE_INFINITY),
    ends: types.map(() => 0),
    alone: types,
  };
  const fixed: Kind[] = [
    ...kinds.map(({ stock }, k) => ({ stock, cost: 0, limit: limits[k]! })),
    { stock: none, cost: 1, limit: Number.POSITIVE_INFINITY },
  ];
  const start: Taken = wanted.map((n, type) => [{ kind: kinds.length, counts: [[type, 1]] }, n] as const);
  const answer = await ask(wanted, fixed, start, seconds, { below: 1 });
  const rulings = answer.rulings.map(({ need, most }) => ({ need, most: most.slice(0, kinds.length) }));
  return { taken: answer.value === 0 ? answer.taken : null, never: answer.bound >= 1, rulings };
}
