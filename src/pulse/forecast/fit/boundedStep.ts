/**
 * The least-squares answer of a linear model within bounds, held back toward what is expected: minimises |r + J (x − x0)|² / σ² +
 * Σ ((x − 1) / spread)² for a handful of unknowns. Which of them end at a bound is found by taking the worst one out at a time.
 */

export type Linear = {
  /** Residuals at `from`, and how they change with each unknown: rows of points. */
  readonly residuals: readonly number[];
  readonly slopes: readonly (readonly number[])[];
  readonly from: readonly number[];
  /** What a residual may be off by. */
  readonly noise: number;
};

type Bound = { readonly least: number; readonly most: number };

/** JᵀJ/σ² + 1/spread², and the right side for x counted from 1. */
function normal({ residuals, slopes, from, noise }: Linear, spread: readonly number[]) {
  const n = from.length;
  const matrix = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => (i === j ? 1 / spread[i]! ** 2 : 0)),
  );
  const right = new Array<number>(n).fill(0);
  for (const [row, residual] of residuals.entries()) {
    const slope = slopes[row]!;
    // The residual where all unknowns are 1.
    const atOne = slope.reduce((sum, s, i) => sum + s * (1 - from[i]!), residual);
    for (let i = 0; i < n; i++) {
      right[i]! -= (slope[i]! * atOne) / noise ** 2;
      for (let j = 0; j < n; j++) matrix[i]![j]! += (slope[i]! * slope[j]!) / noise ** 2;
    }
  }
  return { matrix, right };
}

export function boundedStep(linear: Linear, spread: readonly number[], bounds: readonly Bound[]): number[] {
  const { matrix, right } = normal(linear, spread);
  const held = new Map<number, number>();
  for (;;) {
    const x = solved(matrix, right, held);
    let worst = -1;
    let beyond = 0;
    for (const [i, value] of x.entries()) {
      if (held.has(i)) continue;
      const past = Math.max(bounds[i]!.least - (1 + value), 1 + value - bounds[i]!.most) / spread[i]!;
      if (past > beyond) [worst, beyond] = [i, past];
    }
    // The bound itself, so that one can ask whether it was come to.
    if (worst < 0) return x.map((value, i) => held.get(i) ?? 1 + value);
    const { least, most } = bounds[worst]!;
    held.set(worst, 1 + x[worst]! < least ? least : most);
  }
}

/** How much of what was not known of each unknown is left: 1 where the points say nothing of it, near 0 where they tell it. */
export function leftUnknown(linear: Linear, spread: readonly number[]): number[] {
  const { matrix } = normal(linear, spread);
  return spread.map((width, i) => {
    const unit = spread.map((_, j) => (i === j ? 1 : 0));
    return Math.sqrt(solved(matrix, unit, new Map())[i]!) / width;
  });
}

/** Counted from 1, some unknowns held at a value. The matrix is positive definite, so elimination needs no pivot. */
function solved(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
  held: ReadonlyMap<number, number>,
): number[] {
  const n = right.length;
  const rows = matrix.map((row, i) => {
    if (held.has(i)) return [...row.map((_, j) => (i === j ? 1 : 0)), held.get(i)! - 1];
    const moved = [...held].reduce((sum, [j, value]) => sum + row[j]! * (value - 1), 0);
    return [...row.map((entry, j) => (held.has(j) ? 0 : entry)), right[i]! - moved];
  });
  for (let k = 0; k < n; k++)
    for (let i = k + 1; i < n; i++) {
      const times = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= times * rows[k]![j]!;
    }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    let sum = rows[k]![n]!;
    for (let j = k + 1; j < n; j++) sum -= rows[k]![j]! * x[j]!;
    x[k] = sum / rows[k]![k]!;
  }
  return x;
}
