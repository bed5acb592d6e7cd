/**
 * What a firing order says about joining exhausts, for four-stroke engines that fire evenly: one turn of the order takes
 * 720° of the crank. Cylinders are named by their numbers; crank degrees.
 */

const CYCLE = 720;

/** Crank degrees from one firing to the next. */
export const firingInterval = (order: readonly number[]): number => CYCLE / order.length;

/**
 * Crank degrees from each firing of the bank to its next, in firing order and beginning with the cylinder that fires
 * first; they add up to 720. Empty where none of the bank is in the order.
 */
export function exhaustGaps(order: readonly number[], bank: readonly number[]): number[] {
  const interval = firingInterval(order);
  const turns = order.flatMap((cylinder, i) => (bank.includes(cylinder) ? [i] : []));
  return turns.map((at, k) => ((turns[k + 1] ?? turns[0]! + order.length) - at) * interval);
}

/** The lesser way round between two cylinders' firings, up to 360. @throws where one is not in the order */
export function firingSeparation(order: readonly number[], a: number, b: number): number {
  const [i, k] = [order.indexOf(a), order.indexOf(b)];
  if (i < 0 || k < 0) throw new RangeError(`Cylinder ${i < 0 ? a : b} is not in the firing order ${order.join('-')}`);
  const apart = Math.abs(i - k) * firingInterval(order);
  return Math.min(apart, CYCLE - apart);
}

/** Between the two of these that fire nearest to each other. */
export const leastApart = (order: readonly number[], set: readonly number[]): number =>
  Math.min(...set.flatMap((a, i) => set.slice(0, i).map((b) => firingSeparation(order, a, b))));

/**
 * All ways to part a bank's cylinders into sets of `size` so that the closest two of a set are as far apart as can be: what
 * a 4-2-1 is joined by, in pairs. Empty where the bank cannot be parted so.
 */
export function bestSets(order: readonly number[], bank: readonly number[], size: number): number[][][] {
  const ways = setsOf(
    order.filter((cylinder) => bank.includes(cylinder)),
    size,
  );
  const least = (way: readonly number[][]): number => Math.min(...way.map((set) => leastApart(order, set)));
  const best = Math.max(...ways.map(least));
  return ways.filter((way) => least(way) === best);
}

function setsOf(cylinders: readonly number[], size: number): number[][][] {
  const [first, ...rest] = cylinders;
  if (first === undefined) return [[]];
  return choose(rest, size - 1).flatMap((partners) =>
    setsOf(
      rest.filter((c) => !partners.includes(c)),
      size,
    ).map((others) => [[first, ...partners], ...others]),
  );
}

function choose(from: readonly number[], count: number): number[][] {
  if (count === 0) return [[]];
  return from.flatMap((c, i) => choose(from.slice(i + 1), count - 1).map((others) => [c, ...others]));
}
