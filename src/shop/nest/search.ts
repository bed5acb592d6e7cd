/**
 * What a search for the least cost knows so far: the columns found, the best plan and the bound under it. A bound comes of any
 * worths of the pieces: where no filling is worth more than it costs, all pieces together cost no less than they are worth.
 */
import { everyFill, type Stock } from './fill';
import type { Column, KindCost, Master, Taken } from './master';
import { nextTotal, stepOf } from './units';

export type Kind = KindCost & { readonly stock: Stock };

/** The pieces are worth `need` in all, and one length of each kind holds at most so much. */
export type Ruling = { readonly need: number; readonly most: readonly number[] };

/** Costs that differ by less than this part are the same; lengths and worths are far finer. */
export const NEAR = 1e-6;
export const near = (value: number): number => NEAR * Math.max(1, Math.abs(value));

export const costOf = (taken: Taken, kinds: readonly KindCost[]): number =>
  taken.reduce((sum, [{ kind }, times]) => sum + times * kinds[kind]!.cost, 0);

export type Search = ReturnType<typeof newSearch>;

/** @param below whether a plan of less exists is all that is asked */
export function newSearch(
  wanted: readonly number[],
  kinds: readonly Kind[],
  start: Taken,
  seconds: number,
  below = Number.POSITIVE_INFINITY,
) {
  const columns: Column[] = [];
  const known = new Set<string>();
  const ends = performance.now() + seconds * 1000;
  const step = stepOf(kinds.map(({ cost }) => cost).filter((cost) => cost > 0)) ?? 0;
  let best = { raw: 0, worths: wanted.map(() => 0), kept: kinds.map(({ cost }) => cost) };
  const s = {
    columns,
    /** What the best bound so far was had from. */
    rulings: [] as Ruling[],
    taken: start,
    value: costOf(start, kinds),
    bound: 0,
    left: () => (ends - performance.now()) / 1000,
    done: () => s.value <= s.bound + near(s.value) || s.bound >= below - near(below),
    insert(m: Master, more: readonly Column[]): number {
      const fresh = more.filter(({ kind, counts }) => {
        const key = `${kind}:${counts.map((c) => c.join('x')).join()}`;
        return !known.has(key) && known.add(key);
      });
      columns.push(...fresh);
      m.add(fresh);
      return fresh.length;
    },
    /** Whether what costs this much in fractions can still come to less than the best plan. */
    hopeful: (cost: number) => (step > 0 ? Math.ceil(cost / step - NEAR) * step : cost) < s.value - near(s.value),
    offer(taken: Taken | null) {
      if (!taken || costOf(taken, kinds) >= s.value - near(s.value)) return;
      s.taken = taken;
      s.value = costOf(taken, kinds);
    },
    raise(raw: number) {
      s.bound = Math.max(s.bound, Math.min(s.value, nextTotal(raw, kinds, s.value)));
    },
    /** What pieces are worth, with the most that any filling is worth by it, gives a bound whether they are the best or not. */
    weigh(worths: readonly number[], most: readonly number[]) {
      const over = Math.max(1, ...kinds.map(({ cost, limit }, k) => (Number.isFinite(limit) ? 1 : most[k]! / cost)));
      if (!Number.isFinite(over)) return;
      const kept = kinds.map(({ cost, limit }, k) => (Number.isFinite(limit) ? Math.max(cost, most[k]! / over) : cost));
      let raw = worths.reduce((sum, worth, t) => sum + (worth / over) * wanted[t]!, 0);
      for (const [k, { cost, limit }] of kinds.entries())
        if (Number.isFinite(limit)) raw += limit * Math.min(0, cost - most[k]! / over);
      const need = worths.reduce((sum, worth, t) => sum + worth * wanted[t]!, 0);
      if (raw > best.raw) s.rulings = [{ need, most }];
      if (raw > best.raw) best = { raw, worths: worths.map((worth) => worth / over), kept };
      s.raise(raw);
    },
    /** Every column that a plan below the value could use; null where there are more than `many`. */
    couldBetter(many: number): Column[] | null {
      const gap = s.value - step - best.raw + near(s.value);
      const all: Column[] = [];
      for (const [kind, { stock }] of kinds.entries()) {
        const some = everyFill(stock, best.worths, wanted, best.kept[kind]! - gap, many - all.length);
        if (!some) return null;
        all.push(...some.map((counts) => ({ kind, counts })));
      }
      return all;
    },
  };
  return s;
}
