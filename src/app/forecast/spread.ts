/** The order in which speeds are followed: ends first, then what lies furthest from all that were, so that a curve has its shape early. */

/** Indices of `count` things in a row, each once: the last, 0, the middle, and so on. High speeds are the quickest to follow. */
export function spread(count: number): readonly number[] {
  const order: number[] = [];
  const taken = new Set<number>();
  const take = (index: number) => {
    if (index < 0 || index >= count || taken.has(index)) return;
    taken.add(index);
    order.push(index);
  };
  take(count - 1);
  take(0);
  while (order.length < count) {
    // The middle of the widest gap; of equal ones the first.
    const sorted = [...taken].sort((a, b) => a - b);
    let widest = 0;
    for (let k = 1; k < sorted.length - 1; k++)
      if (sorted[k + 1]! - sorted[k]! > sorted[widest + 1]! - sorted[widest]!) widest = k;
    take((sorted[widest]! + sorted[widest + 1]!) >> 1);
  }
  return order;
}
