/**
 * What a firing order says about joining exhausts, for four-stroke engines that fire evenly: one turn of the order takes
 * 720° of the crank. Cylinders are named by their numbers; crank degrees.
 */

const CYCLE = 720;

/** Crank degrees from one firing to the next. */
export const firingInterval = (order: readonly number[]): number => CYCLE / order.length;

/** Pairs that fire one crank turn apart, in firing order; none where the number of cylinders is odd. */
export function pairsOneTurnApart(order: readonly number[]): (readonly [number, number])[] {
  if (order.length % 2 !== 0) return [];
  const half = order.length / 2;
  return order.slice(0, half).map((cylinder, i) => [cylinder, order[i + half]!] as const);
}

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

/** All ways to pair a bank's cylinders so that the closest pair is as far apart as can be: what a 4-2-1 is joined by. */
export function bestPairs(order: readonly number[], bank: readonly number[]): (readonly [number, number])[][] {
  const ways = pairings(order.filter((cylinder) => bank.includes(cylinder)));
  const least = (way: (readonly [number, number])[]): number =>
    Math.min(...way.map(([a, b]) => firingSeparation(order, a, b)));
  const best = Math.max(...ways.map(least));
  return ways.filter((way) => least(way) === best);
}

function pairings(cylinders: readonly number[]): (readonly [number, number])[][] {
  const [first, ...rest] = cylinders;
  if (first === undefined) return [[]];
  return rest.flatMap((partner) =>
    pairings(rest.filter((c) => c !== partner)).map((others) => [[first, partner] as const, ...others]),
  );
}
