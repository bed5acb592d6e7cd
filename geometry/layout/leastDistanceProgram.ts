/**
 * The quadratic program inside `balance`: the shortest y with E·y = e and A·y ≥ b.
 *
 * Solved through its dual, whose unknowns are the multipliers of the few rows that matter: an active set that starts
 * from the last one's, so that a live drag changes it by a row or two (Lawson & Hanson, Solving Least Squares Problems,
 * ch. 23, with equality rows that never leave). Rows are held by a stiff spring, 1/ρ on the dual's diagonal: dependent or
 * contradictory rows then give the least violation instead of a breakdown.
 */

export type Rows = {
  readonly count: number;
  readonly columns: number;
  /** Row-major gradients, count × columns. */
  readonly gradients: Float64Array;
  readonly bounds: Float64Array;
  /** 1 where the row is an equality. */
  readonly isEquality: Uint8Array;
};

export type Solution = {
  readonly y: Float64Array;
  /** One for each row; 0 where the row does not press. */
  readonly multipliers: Float64Array;
};

/** Reused between calls: a live drag would otherwise leave megabytes a second to the collector. */
const scratch = { gram: new Float64Array(0), factor: new Float64Array(0), solution: new Float64Array(0) };

function reserve(name: keyof typeof scratch, size: number): Float64Array {
  if (scratch[name].length < size) scratch[name] = new Float64Array(2 * size);
  return scratch[name];
}

/** A row that is missed by no more than this is not worth adding, in the rows' own unit (mm). */
const SATISFIED = 1e-9;

/**
 * @param stiffness ρ: a row is missed by its multiplier over ρ
 * @param warm rows that pressed last time
 */
export function leastDistance(rows: Rows, stiffness: number, warm: readonly number[]): Solution {
  const { count, columns, gradients, bounds, isEquality } = rows;
  const gram = gramMatrix(rows, stiffness);
  const active: number[] = [];
  for (let i = 0; i < count; i++) if (isEquality[i]) active.push(i);
  for (const i of warm) if (i < count && !isEquality[i]) active.push(i);
  const multipliers = new Float64Array(count);
  const y = new Float64Array(columns);
  const limit = 3 * count + 10;
  for (let round = 0; round < limit; round++) {
    settle(active, gram, count, bounds, isEquality, multipliers);
    y.fill(0);
    for (const i of active) addMultiple(y, gradients, i * columns, multipliers[i]!);
    let worst = -1;
    let miss = SATISFIED;
    for (let i = 0; i < count; i++) {
      if (multipliers[i] !== 0 || isEquality[i]) continue;
      const short = bounds[i]! - product(gradients, i * columns, y);
      if (short > miss && !active.includes(i)) {
        miss = short;
        worst = i;
      }
    }
    if (worst < 0) break;
    active.push(worst);
  }
  return { y, multipliers };
}

/** Solves for the active rows' multipliers, dropping inequality rows that would pull, until none does. */
function settle(
  active: number[],
  gram: Float64Array,
  count: number,
  bounds: Float64Array,
  isEquality: Uint8Array,
  multipliers: Float64Array,
): void {
  while (active.length > 0) {
    const wanted = solveActive(active, gram, count, bounds);
    let step = 1;
    let blocking = -1;
    for (const [k, i] of active.entries()) {
      if (isEquality[i] || wanted[k]! > 0) continue;
      const from = multipliers[i]!;
      const reach = from > 0 ? from / (from - wanted[k]!) : 0;
      if (reach < step || blocking < 0) {
        step = Math.min(step, reach);
        blocking = k;
      }
    }
    for (const [k, i] of active.entries()) multipliers[i] = multipliers[i]! + step * (wanted[k]! - multipliers[i]!);
    if (blocking < 0) return;
    multipliers[active[blocking]!] = 0;
    active.splice(blocking, 1);
  }
}

/** Cholesky of the active rows' Gram matrix; it is positive definite because of the springs. */
function solveActive(active: readonly number[], gram: Float64Array, count: number, bounds: Float64Array): Float64Array {
  const n = active.length;
  const L = reserve('factor', n * n);
  const x = reserve('solution', n);
  for (let r = 0; r < n; r++) {
    const row = active[r]! * count;
    for (let c = 0; c <= r; c++) {
      let sum = gram[row + active[c]!]!;
      for (let k = 0; k < c; k++) sum -= L[r * n + k]! * L[c * n + k]!;
      L[r * n + c] = r === c ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / L[c * n + c]!;
    }
    let sum = bounds[active[r]!]!;
    for (let k = 0; k < r; k++) sum -= L[r * n + k]! * x[k]!;
    x[r] = sum / L[r * n + r]!;
  }
  for (let r = n - 1; r >= 0; r--) {
    let sum = x[r]!;
    for (let k = r + 1; k < n; k++) sum -= L[k * n + r]! * x[k]!;
    x[r] = sum / L[r * n + r]!;
  }
  return x;
}

/** A row touches the unknowns of one or two runners: products are taken over the stretch that two rows share. */
function gramMatrix({ count, columns, gradients }: Rows, stiffness: number): Float64Array {
  const gram = reserve('gram', count * count);
  const first = new Int32Array(count);
  const last = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    let low = 0;
    let high = columns - 1;
    while (low < columns && gradients[i * columns + low] === 0) low++;
    while (high > low && gradients[i * columns + high] === 0) high--;
    first[i] = low;
    last[i] = high;
  }
  for (let i = 0; i < count; i++)
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? 1 / stiffness : 0;
      const p = i * columns;
      const q = j * columns;
      const end = Math.min(last[i]!, last[j]!);
      for (let k = Math.max(first[i]!, first[j]!); k <= end; k++) sum += gradients[p + k]! * gradients[q + k]!;
      gram[i * count + j] = sum;
      gram[j * count + i] = sum;
    }
  return gram;
}

function addMultiple(y: Float64Array, rows: Float64Array, at: number, k: number): void {
  for (let i = 0; i < y.length; i++) y[i] = y[i]! + k * rows[at + i]!;
}

function product(rows: Float64Array, at: number, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < y.length; i++) sum += rows[at + i]! * y[i]!;
  return sum;
}
