/** Who takes what, so that the whole costs least: inlets to runners, by trying all orders with a bound; merges have few inlets. */

/**
 * @param costs of each row at each column; at least as many columns as rows
 * @returns a column of its own for each row
 */
export function cheapest(costs: readonly (readonly number[])[]): number[] {
  let best: number[] = [];
  let bound = Infinity;
  const least = costs.map((row) => Math.min(...row));
  const after = least.map((_, i) => least.slice(i + 1).reduce((sum, c) => sum + c, 0));
  const extend = (order: number[], sum: number): void => {
    const row = costs[order.length];
    if (!row) {
      best = order;
      bound = sum;
      return;
    }
    for (const [k, cost] of row.entries())
      if (!order.includes(k) && sum + cost + after[order.length]! < bound) extend([...order, k], sum + cost);
  };
  extend([], 0);
  return best;
}
