/** Every way to share few pieces among few bars, one piece at a time: slow, and without any of the search's ideas. */
import type { BarProblem } from '../../../src/shop/nest/bars';

type Open = { readonly stock: number; readonly bought: boolean; room: number };
const NIL = 1e-7;

/** Fewest pieces left over, then least bought. */
export function leastBought({ pieces, stock, kerf, endTrim }: BarProblem): { over: number; value: number } {
  const money = stock.every(({ buy, price }) => !buy || price !== undefined);
  const cost = stock.map(({ price, length }) => (money ? (price ?? 0) : length));
  let best = { over: pieces.length, value: 0 };
  const sorted = [...pieces].sort((a, b) => b.length - a.length);
  const shelf = stock.map(({ count }) => count);
  const walk = (i: number, open: Open[], over: number, value: number): void => {
    if (
      over > best.over ||
      (over === best.over && value >= best.value - 1e-9 && !(i === sorted.length && over < best.over))
    )
      return;
    if (i === sorted.length) {
      best = { over, value };
      return;
    }
    const takes = sorted[i]!.length + kerf;
    for (const one of open)
      if (takes <= one.room + NIL) {
        one.room -= takes;
        walk(i + 1, open, over, value);
        one.room += takes;
      }
    for (const [s, { length, buy }] of stock.entries()) {
      const room = length - 2 * endTrim + kerf;
      if (takes > room + NIL) continue;
      if (shelf[s]! > 0) {
        shelf[s]!--;
        walk(i + 1, [...open, { stock: s, bought: false, room: room - takes }], over, value);
        shelf[s]!++;
      }
      if (buy) walk(i + 1, [...open, { stock: s, bought: true, room: room - takes }], over, value + cost[s]!);
    }
    walk(i + 1, open, over + 1, value);
  };
  // A plan that leaves all over is where it begins; one with as many over and nothing bought is no better.
  walk(0, [], 0, 0);
  return best;
}

/** Where nothing must be bought: the least length of shelf that all comes out of. */
export function leastShelf({ pieces, stock, kerf, endTrim }: BarProblem): number {
  const units = stock.flatMap(({ length, count }) => Array.from({ length: count }, () => length));
  let best = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 2 ** units.length; set++) {
    const taken = units.filter((_, i) => set & (1 << i));
    const sum = taken.reduce((a, b) => a + b, 0);
    if (
      sum < best &&
      pack(
        taken.map((l) => l - 2 * endTrim + kerf),
        pieces.map(({ length }) => length + kerf),
      )
    )
      best = sum;
  }
  return best;
}

function pack(rooms: number[], takes: readonly number[]): boolean {
  const [first, ...others] = takes;
  if (first === undefined) return true;
  return rooms.some((room, i) => first <= room + NIL && pack(rooms.with(i, room - first), others));
}
