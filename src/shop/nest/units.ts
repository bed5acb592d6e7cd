/** Which totals can come of costs at all: a bound between two of them is as good as the next. Costs in thousandths at the finest. */

const FINEST = 1000;
const MOST = 2_000_000;

/** The largest step that every cost is a whole number of; null where there is none as coarse as a thousandth. */
export function stepOf(costs: readonly number[]): number | null {
  let common = 0;
  for (const cost of costs) {
    const whole = Math.round(cost * FINEST);
    if (Math.abs(cost * FINEST - whole) > 1e-6) return null;
    common = divisor(common, whole);
  }
  return common === 0 ? null : common / FINEST;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));

/** The least total that is `bound` or more, out of any number of each cost up to its limit. */
export function nextTotal(
  bound: number,
  kinds: readonly { readonly cost: number; readonly limit: number }[],
  upTo: number,
): number {
  const costly = kinds.filter(({ cost }) => cost > 0);
  const step = stepOf(costly.map(({ cost }) => cost));
  if (step === null) return bound;
  const least = Math.max(0, Math.ceil(bound / step - 1e-6));
  const size = Math.round(upTo / step);
  if (size > MOST || least >= size) return Math.min(least * step, Math.max(upTo, bound));
  // How many of the kind at hand the total was last reached with; -1: not reached.
  const used = new Int32Array(size + 1).fill(-1);
  used[0] = 0;
  for (const { cost, limit } of costly) {
    const weight = Math.round(cost / step);
    for (let total = 0; total <= size; total++) {
      if (used[total]! >= 0) used[total] = 0;
      else if (total >= weight && used[total - weight]! >= 0 && used[total - weight]! < limit)
        used[total] = used[total - weight]! + 1;
    }
  }
  for (let total = least; total <= size; total++) if (used[total]! >= 0) return total * step;
  return upTo;
}
