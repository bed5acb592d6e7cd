/**
 * Pieces shared out among a shelf and what can be bought, in this order: as few pieces as possible are left over; the least is
 * bought; where something is, the shelf is used up first, where nothing is, the least of it is used; what is left is in as few and as
 * long pieces as a refill finds. The first two are proved or say that they are not; the least of the shelf is proved where that is
 * soon had, and the rest is a good try.
 */
import { cover } from './cover';
import { bestFill, type Counts, SAME, type Stock } from './fill';
import type { Taken } from './master';
import { type Kind, near } from './search';

export type Source = 'shelf' | 'bought';

/** A kind of stock: how many are on the shelf, and what one more costs, if it can be bought. */
export type Supply = {
  readonly stock: Stock;
  readonly shelf: number;
  readonly buy: boolean;
  /** Of one bought: money, length or just one. */
  readonly cost: number;
  /** How much of it there is, where the shelf is to be spared. */
  readonly size: number;
};

/** One length of stock with what is cut from it. */
export type Bin = { readonly supply: number; readonly source: Source; readonly counts: Counts };

export type Shared = {
  readonly bins: readonly Bin[];
  /** How many of each type nothing is left for. */
  readonly over: readonly number[];
  /** What was made least: what is bought or, where nothing is, what is taken from the shelf. */
  readonly of: Source;
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
};

type Offer = Kind & { readonly supply: number; readonly source: Source };

const FILL_STEPS = 20_000;
const REFILL_STEPS = 50_000;

export async function share(wanted: readonly number[], supplies: readonly Supply[], seconds: number): Promise<Shared> {
  const ends = performance.now() + seconds * 1000;
  const left = () => (ends - performance.now()) / 1000;
  const shelf = supplies.flatMap((s, supply): Offer[] =>
    s.shelf > 0 ? [{ supply, source: 'shelf', stock: s.stock, limit: s.shelf, cost: 0 }] : [],
  );
  const shop = supplies.flatMap((s, supply): Offer[] =>
    s.buy ? [{ supply, source: 'bought', stock: s.stock, limit: Number.POSITIVE_INFINITY, cost: s.cost }] : [],
  );
  const short = wanted.map((n, type) => (shop.some(({ stock }) => holds(stock, type)) ? 0 : n));
  const rescued = await fewestOver(short, shelf, left());
  const given = wanted.map((n, type) => n - rescued.over[type]!);
  const kinds = [...shelf, ...shop];
  const bought = await cover(given, kinds, greedy(given, kinds, rescued.taken), left());
  const spared = await leastOfShelf(given, supplies, kinds, bought.taken, left());
  const bins = refilled(shelfFirst(toBins(given, kinds, spared.taken), supplies, given), supplies, given);
  // That nothing must be bought needs no proof; how little of the shelf will do is only told where it is proved.
  const sparing = bought.value === 0 && spared.proved && spared.value > 0;
  const answer = sparing ? { ...spared, of: 'shelf' as const } : { ...bought, of: 'bought' as const };
  const proved = answer.proved && rescued.proved;
  return { bins, over: rescued.over, of: answer.of, value: answer.value, bound: answer.bound, proved };
}

export const holds = ({ takes, room, alone }: Stock, type: number): boolean =>
  takes[type]! <= room + SAME || alone.includes(type);

/** Of pieces that nothing on sale is good for, as many as possible out of the shelf. */
async function fewestOver(short: readonly number[], shelf: readonly Offer[], seconds: number) {
  if (short.every((n) => n === 0)) return { over: short, taken: [], proved: true };
  const types = short.map((_, type) => type);
  const none: Stock = {
    room: 0,
    takes: types.map(() => Number.POSITIVE_INFINITY),
    ends: types.map(() => 0),
    alone: types,
  };
  const kinds: Kind[] = [
    ...shelf.map((offer) => ({ ...offer, cost: 0 })),
    { stock: none, limit: Number.POSITIVE_INFINITY, cost: 1 },
  ];
  const { taken, proved } = await cover(short, kinds, greedy(short, kinds, []), seconds);
  const rest = [...short];
  const kept = taken.filter(([{ kind }]) => kind < shelf.length);
  for (const [{ counts }, times] of kept)
    for (const [type, n] of counts) rest[type] = Math.max(0, rest[type]! - n * times);
  return { over: rest, taken: kept, proved };
}

/** A first plan: each length as full as can be, the shelf first, then what gives most for its cost. */
function greedy(wanted: readonly number[], kinds: readonly Kind[], begun: Taken): Taken {
  const rest = [...wanted];
  const limits = kinds.map(({ limit }) => limit);
  const taken: [Taken[number][0], number][] = [];
  const take = ([column, times]: Taken[number]) => {
    taken.push([column, times]);
    limits[column.kind]! -= times;
    for (const [type, n] of column.counts) rest[type] = Math.max(0, rest[type]! - n * times);
  };
  for (const one of begun) take(one);
  const sizes = wanted.map(
    (_, type) =>
      Math.min(...kinds.map(({ stock }) => (stock.alone.includes(type) ? stock.room : stock.takes[type]!))) || 1,
  );
  const rate = (k: number, worth: number) => (kinds[k]!.cost > 0 ? worth / kinds[k]!.cost : Number.POSITIVE_INFINITY);
  while (rest.some((n) => n > 0)) {
    let best: { kind: number; counts: Counts; worth: number } | undefined;
    for (const [kind, { stock }] of kinds.entries()) {
      if (limits[kind]! < 1) continue;
      const { counts, worth } = bestFill(stock, sizes, rest, { steps: FILL_STEPS });
      if (counts.length === 0) continue;
      if (!best || rate(kind, worth) > rate(best.kind, best.worth)) best = { kind, counts, worth };
    }
    if (!best) throw new Error('A piece is left that no stock holds.');
    const { kind, counts } = best;
    const times = Math.min(limits[kind]!, ...counts.map(([type, n]) => Math.floor(rest[type]! / n)));
    take([{ kind, counts }, Math.max(1, times)]);
  }
  return taken;
}

/** With what is bought as it is, the least of the shelf. */
async function leastOfShelf(
  wanted: readonly number[],
  supplies: readonly Supply[],
  kinds: readonly Offer[],
  taken: Taken,
  seconds: number,
) {
  const nothing = { taken, value: 0, bound: 0, proved: true };
  if (!taken.some(([{ kind }]) => kinds[kind]!.source === 'shelf')) return nothing;
  const used = kinds.map((_, k) => taken.reduce((sum, [{ kind }, times]) => sum + (kind === k ? times : 0), 0));
  const fixed = kinds.map(
    ({ stock, source, limit, supply }, k): Kind =>
      source === 'shelf' ? { stock, limit, cost: supplies[supply]!.size } : { stock, limit: used[k]!, cost: 0 },
  );
  return cover(wanted, fixed, taken, seconds, { light: true });
}

/** One by one, without what is had more often than wanted. */
function toBins(wanted: readonly number[], kinds: readonly Offer[], taken: Taken): Bin[] {
  const rest = [...wanted];
  const bins: Bin[] = [];
  for (const [{ kind, counts }, times] of taken)
    for (let i = 0; i < times; i++) {
      const had = counts.flatMap(([type, n]) => {
        const count = Math.min(n, rest[type]!);
        rest[type]! -= count;
        return count > 0 ? [[type, count] as const] : [];
      });
      const { supply, source } = kinds[kind]!;
      if (had.length > 0) bins.push({ supply, source, counts: had });
    }
  return bins;
}

const filledBy = ({ takes, alone, room }: Stock, counts: Counts): number =>
  counts.reduce((sum, [type, n]) => sum + (alone.includes(type) ? room : n * takes[type]!), 0);

/** Something is bought anyway: what the shelf can take is cut from there, so that most is left of what is new. */
function shelfFirst(bins: readonly Bin[], supplies: readonly Supply[], wanted: readonly number[]): readonly Bin[] {
  const bought = bins.filter(({ source }) => source === 'bought');
  if (bought.length === 0) return bins;
  const pieces = wanted.reduce((sum, n) => sum + n, 0);
  const shelf = supplies.flatMap(({ shelf: count }, supply) =>
    Array.from({ length: Math.min(count, pieces) }, (): Bin => ({ supply, source: 'shelf', counts: [] })),
  );
  const room = ({ supply }: Bin) => supplies[supply]!.stock.room;
  const rising = (some: readonly Bin[]) => [...some].sort((a, b) => room(a) - room(b) || a.supply - b.supply);
  return fillInTurn([...rising(shelf), ...rising(bought)], supplies, wanted) ?? bins;
}

/** The same lengths of stock filled one after the other, so that what is left comes together in the last. */
function refilled(bins: readonly Bin[], supplies: readonly Supply[], wanted: readonly number[]): readonly Bin[] {
  const stockOf = ({ supply }: Bin) => supplies[supply]!.stock;
  const score = (some: readonly Bin[]) =>
    some.reduce((sum, bin) => sum + Math.max(0, stockOf(bin).room - filledBy(stockOf(bin), bin.counts)) ** 2, 0);
  const rising = [...bins].sort((a, b) => stockOf(a).room - stockOf(b).room || a.supply - b.supply);
  let best = bins;
  const lasts = rising
    .filter((bin, i) => i === 0 || bin.supply !== rising[i - 1]!.supply || bin.source !== rising[i - 1]!.source)
    .filter(({ source }, _, all) => source === 'bought' || all.every((other) => other.source === 'shelf'));
  for (const last of lasts) {
    const order = [...rising.filter((bin) => bin !== last), last];
    const again = fillInTurn(order, supplies, wanted);
    if (again && score(again) > score(best) + near(score(best))) best = again;
  }
  return best;
}

function fillInTurn(order: readonly Bin[], supplies: readonly Supply[], wanted: readonly number[]): Bin[] | null {
  const rest = [...wanted];
  const filled = order.flatMap((bin): Bin[] => {
    const { stock } = supplies[bin.supply]!;
    const sizes = rest.map((_, type) => (stock.alone.includes(type) ? stock.room : stock.takes[type]!));
    const { counts } = bestFill(stock, sizes, rest, { steps: REFILL_STEPS });
    for (const [type, n] of counts) rest[type]! -= n;
    return counts.length > 0 ? [{ ...bin, counts }] : [];
  });
  return rest.every((n) => n === 0) ? filled : null;
}
