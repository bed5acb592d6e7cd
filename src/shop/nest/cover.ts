/**
 * Every piece out of stock at the least cost, and the proof: column generation finds the least cost in fractions, rounded up to
 * a total that costs can make it is a bound. Plans in whole numbers come from the columns found, from diving through fractions,
 * and at last from every column that a better plan could use. Steps are counted, so the same is found again; the clock only
 * ends what takes too long, and then says so by a bound below the value.
 */
import { diveOnce } from './dive';
import { byNumbers } from './levels';
import { type Column, master, type Taken, wholeNumbers } from './master';
import { relax } from './relax';
import { costOf, type Kind, near, newSearch, type Ruling } from './search';
import { solver } from './solver';
import { nextTotal } from './units';

export type Covered = {
  readonly taken: Taken;
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
  readonly rulings: readonly Ruling[];
};

const FIRST_DIVES = 4;
const MORE_DIVES = 8;
const MANY_COLUMNS = 40_000;
const FIRST_NODES = 200;
const LAST_NODES = 1_000_000;
/** What a light search takes on at the end. */
const FEW_COLUMNS = 2000;
const FEW_NODES = 100;

/**
 * @param start a plan that gives every piece
 * @param light a good plan is enough: proved only where that is soon had
 * @param below whether a plan of less exists is all that is asked: a bound there ends the search
 */
export async function cover(
  wanted: readonly number[],
  kinds: readonly Kind[],
  start: Taken,
  seconds: number,
  { below = Number.POSITIVE_INFINITY, light = false } = {},
): Promise<Covered> {
  const easy = easyBound(wanted, kinds, costOf(start, kinds));
  const first = costOf(start, kinds);
  if (first <= easy + near(easy)) return { taken: start, value: first, bound: first, proved: true, rulings: [] };
  const highs = await solver();
  const search = newSearch(wanted, kinds, start, seconds, below);
  const m = master(highs, wanted, kinds);
  try {
    const begun = start.map(([column]) => column);
    search.insert(m, begun);
    relax(m, search, wanted, kinds, false);
    search.raise(easy);
    const goOn = () => !search.done() && search.left() > 0;
    const whole = (nodes: number, columns: readonly Column[]) =>
      wholeNumbers(highs, wanted, kinds, columns, { enough: search.bound, nodes, seconds: search.left() });
    for (let dive = 0; dive < FIRST_DIVES && goOn(); dive++) search.offer(diveOnce(m, search, wanted, kinds, dive));
    const onSale = kinds.filter(({ limit, cost }) => !Number.isFinite(limit) && cost > 0).length;
    if (goOn() && onSale > 1) await byNumbers(search, wanted, kinds, cover);
    if (goOn() && !light) search.offer(whole(FIRST_NODES, search.columns).taken);
    for (let dive = 0; dive < MORE_DIVES && goOn() && !light; dive++) {
      search.offer(diveOnce(m, search, wanted, kinds, FIRST_DIVES + dive));
      if (dive % 4 === 3 && goOn()) search.offer(whole(FIRST_NODES, search.columns).taken);
    }
    if (goOn()) {
      const all = search.couldBetter(light ? FEW_COLUMNS : MANY_COLUMNS);
      const answer = whole(light ? FEW_NODES : LAST_NODES, all ?? (light ? [] : search.columns));
      search.offer(answer.taken);
      // A better plan would use these columns only: what none of theirs is below, no plan is below.
      if (all) search.raise(Math.min(search.value, answer.finished ? search.value : answer.bound));
    }
    const { taken, value, rulings } = search;
    const proved = value <= search.bound + near(value);
    return { taken, value, bound: proved ? value : search.bound, proved, rulings };
  } finally {
    m.dispose();
  }
}

/** By room alone: what the pieces take, at the least cost of room. */
function easyBound(wanted: readonly number[], kinds: readonly Kind[], value: number): number {
  const least = wanted.map((_, t) =>
    Math.min(...kinds.map(({ stock }) => (stock.alone.includes(t) ? 0 : stock.takes[t]!))),
  );
  const taken = wanted.reduce((sum, n, t) => sum + n * least[t]!, 0);
  const open = kinds.filter(({ limit }) => !Number.isFinite(limit));
  if (open.length === 0 || open.some(({ cost }) => cost === 0) || !Number.isFinite(taken)) return 0;
  const perRoom = Math.min(...open.map(({ cost, stock }) => cost / stock.room));
  let bound = taken * perRoom;
  for (const { cost, limit, stock } of kinds)
    if (Number.isFinite(limit)) bound += limit * Math.min(0, cost - stock.room * perRoom);
  return Number.isFinite(bound) ? nextTotal(Math.max(0, bound - near(bound)), kinds, value) : 0;
}
