/**
 * One length of stock filled as well as can be: which pieces, by what they are worth. Depth first over types in order of worth
 * by room taken, cut off by what the room left could hold at most. Real lengths, no grid. Of a bend, its two ends hold a leg each.
 */

/** What can be cut from one length. Types are pieces alike, by number. */
export type Stock = {
  readonly room: number;
  /** Room that one of each type takes; infinite where it cannot be cut from this beside others. */
  readonly takes: readonly number[];
  /** At which ends a piece with a leg may lie: 1 the first, 2 the second, 3 either; 0 of a piece that may lie anywhere. */
  readonly ends: readonly number[];
  /** Types that take the whole of it. */
  readonly alone: readonly number[];
};

/** How many of each type, those there are. */
export type Counts = readonly (readonly [type: number, count: number])[];

export type Filled = {
  readonly counts: Counts;
  readonly worth: number;
  /** Nothing that fits is worth more. */
  readonly most: number;
};

/** Sums of lengths are equal where they differ by less. mm, or degrees. */
export const SAME = 1e-7;
/** Of a worth: less than this part more is not more. Above what `SAME` can make of any room there is. */
const MORE = 1e-7;
const FULL = 4;

/** Ends taken once a piece that may lie at `mask` is added, or -1 where it cannot be: 0 none, 1 to 3 one piece, 4 both. */
export function endsWith(taken: number, mask: number): number {
  if (mask === 0) return taken;
  if (taken === 0) return mask;
  return taken !== FULL && (taken | mask) === 3 ? FULL : -1;
}

type Ordered = {
  readonly types: readonly number[];
  readonly takes: readonly number[];
  readonly worth: readonly number[];
  readonly copies: readonly number[];
};

function ordered(stock: Stock, worths: readonly number[], copies: readonly number[], least: number): Ordered {
  const types = stock.takes
    .map((_, type) => type)
    .filter((t) => copies[t]! > 0 && stock.takes[t]! <= stock.room + SAME && worths[t]! >= least);
  const density = (t: number) => worths[t]! / stock.takes[t]!;
  types.sort((a, b) => density(b) - density(a) || stock.takes[b]! - stock.takes[a]! || a - b);
  const of = (from: readonly number[]) => types.map((t) => from[t]!);
  return { types, takes: of(stock.takes), worth: of(worths), copies: of(copies) };
}

/** At most this much more is had from types `i` and on in the room left: as if the last could be cut short. */
function atMost({ takes, worth, copies }: Ordered, i: number, left: number): number {
  let sum = 0;
  for (let k = i; k < takes.length; k++) {
    const n = Math.min(copies[k]!, left / takes[k]!);
    sum += n * worth[k]!;
    left -= n * takes[k]!;
    if (left <= 0) break;
  }
  return sum;
}

/**
 * @param beat only what is worth more is of interest
 * @param steps at most; where they do not suffice `most` says what is still possible
 * @param slack what is better by less than this part is let go
 */
export function bestFill(
  stock: Stock,
  worths: readonly number[],
  copies: readonly number[],
  { beat = 0, steps = Number.POSITIVE_INFINITY, slack = 0 } = {},
): Filled {
  const order = ordered(stock, worths, copies, Number.MIN_VALUE);
  const { types, takes, worth } = order;
  const chosen = new Array<number>(types.length).fill(0);
  let best: Counts = [];
  let bestWorth = beat;
  for (const t of stock.alone)
    if (copies[t]! > 0 && worths[t]! > bestWorth) {
      best = [[t, 1]];
      bestWorth = worths[t]!;
    }
  let taken = 0;
  const enough = () => bestWorth * (1 + slack + MORE);
  const walk = (i: number, left: number, sum: number, ends: number): void => {
    if (sum > bestWorth) {
      bestWorth = sum;
      best = types.flatMap((t, k) => (chosen[k]! > 0 ? [[t, chosen[k]!] as const] : []));
    }
    if (i === types.length || taken++ >= steps) return;
    if (sum + atMost(order, i, left + SAME) <= enough()) return;
    const within: number[] = [ends];
    const most = Math.min(order.copies[i]!, Math.floor((left + SAME) / takes[i]!));
    while (within.length <= most) {
      const next = endsWith(within.at(-1)!, stock.ends[types[i]!]!);
      if (next < 0) break;
      within.push(next);
    }
    for (let n = within.length - 1; n >= 0; n--) {
      chosen[i] = n;
      walk(i + 1, Math.max(0, left - n * takes[i]!), sum + n * worth[i]!, within[n]!);
    }
    chosen[i] = 0;
  };
  const ceiling = Math.max(atMost(order, 0, stock.room + SAME), bestWorth);
  walk(0, stock.room, 0, 0);
  return { counts: best, worth: bestWorth, most: taken > steps ? Math.max(ceiling, bestWorth) : enough() };
}

/**
 * Every way to fill it that is worth `least` or more and to which nothing can be added; null where there are more than `many`.
 * A way to which something can be added is worth no more than that with it, so none is missed.
 */
export function everyFill(
  stock: Stock,
  worths: readonly number[],
  copies: readonly number[],
  least: number,
  many: number,
): Counts[] | null {
  const order = ordered(stock, worths, copies, 0);
  const { types, takes, worth } = order;
  const chosen = new Array<number>(types.length).fill(0);
  const found: Counts[] = stock.alone.filter((t) => copies[t]! > 0 && worths[t]! >= least).map((t) => [[t, 1]]);
  let taken = 0;
  const addable = (left: number, ends: number) =>
    types.some(
      (t, k) => chosen[k]! < order.copies[k]! && takes[k]! <= left + SAME && endsWith(ends, stock.ends[t]!) >= 0,
    );
  const walk = (i: number, left: number, sum: number, ends: number): boolean => {
    if (taken++ > 100 * many) return false;
    if (sum + atMost(order, i, left + SAME) < least) return true;
    if (i === types.length) {
      if (!addable(left, ends)) found.push(types.flatMap((t, k) => (chosen[k]! > 0 ? [[t, chosen[k]!] as const] : [])));
      return found.length <= many;
    }
    const at = [ends];
    const most = Math.min(order.copies[i]!, Math.floor((left + SAME) / takes[i]!));
    while (at.length <= most) {
      const next = endsWith(at.at(-1)!, stock.ends[types[i]!]!);
      if (next < 0) break;
      at.push(next);
    }
    for (let n = at.length - 1; n >= 0; n--) {
      chosen[i] = n;
      if (!walk(i + 1, Math.max(0, left - n * takes[i]!), sum + n * worth[i]!, at[n]!)) return false;
    }
    chosen[i] = 0;
    return true;
  };
  return walk(0, stock.room, 0, 0) ? found : null;
}
