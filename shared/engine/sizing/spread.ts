/** Several estimates of one size: the least, the greatest, and where to start. */
import type { Estimate, Quantity, StartingSize } from './types';

/** @param estimates at least one of them a size */
export function sizeOf(
  quantity: Quantity,
  name: string,
  measured: string,
  estimates: readonly Estimate[],
): StartingSize {
  const inOrder = [...estimates].sort((a, b) => a.mm - b.mm);
  return {
    quantity,
    name,
    measured,
    estimates,
    least: inOrder[0]!,
    greatest: inOrder.at(-1)!,
    start: startFrom(estimates),
  };
}

/**
 * The middle of the sizes, not their mean: one formula made for another kind of engine shall not pull it. Then within the
 * bounds; where those contradict each other the lower one holds, since it keeps the way open.
 */
export function startFrom(estimates: readonly Estimate[]): number {
  const of = (bearing: Estimate['bearing']): number[] =>
    estimates.filter((e) => e.bearing === bearing).map((e) => e.mm);
  const sizes = of('size').sort((a, b) => a - b);
  const half = sizes.length / 2;
  const middle = (sizes[Math.ceil(half) - 1]! + sizes[Math.floor(half)]!) / 2;
  return Math.max(Math.min(middle, ...of('at most')), ...of('at least'));
}
