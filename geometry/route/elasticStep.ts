/**
 * The step of an elastic least-squares program: rules pull back in proportion to what they would be missed by after the
 * step, ½·λ·|y|² + ½·Σ (v + g·y)² over equalities and over inequalities that would end below 0. Unlike least distance it
 * gives a sensible step where rules contradict each other, as they do far from any layout.
 *
 * Solved by semi-smooth Newton: guess which rules pull, solve the normal equations, look again; a few guesses suffice.
 */
import type { RowBuilder } from '../layout/rowBuilder';

const GUESSES = 8;

/** Memory for one step after another; nothing in it outlives a step. */
let normal = new Float64Array(0);
let right = new Float64Array(0);
let one = new Float64Array(0);
let two = new Float64Array(0);
/** The unknowns on which each row depends, row after row, with its slopes: most depend on few. */
let begin = new Int32Array(1);
let column = new Int32Array(0);
let slope = new Float64Array(0);
let value = new Float64Array(0);
let equality = new Uint8Array(0);
let pulls = new Uint8Array(0);

export class ElasticStep {
  readonly y: Float64Array;

  /** @param lever what a step of each unknown moves, mm */
  constructor(private readonly lever: Float64Array) {
    const n = lever.length;
    this.y = new Float64Array(n);
    if (right.length >= n) return;
    normal = new Float64Array(n * n);
    right = new Float64Array(n);
    one = new Float64Array(n);
    two = new Float64Array(n);
  }

  /**
   * The step in the unknowns' own units, into `y`.
   * @returns half the sum of squares that the linearised rules promise to leave
   */
  solve(rows: RowBuilder, stiffness: number): number {
    const { count } = rows;
    this.take(rows);
    const { y } = this;
    const [from, columns, slopes, values] = [begin, column, slope, value];
    let promised = 0;
    for (let guess = 0; guess < GUESSES; guess++) {
      this.solveGuess(count, stiffness);
      let changed = false;
      promised = 0;
      for (let i = 0; i < count; i++) {
        let after = values[i]!;
        const end = from[i + 1]!;
        for (let k = from[i]!; k < end; k++) after += slopes[k]! * y[columns[k]!]!;
        const pull = equality[i] === 1 || after < 0 ? 1 : 0;
        if (pull) promised += (after * after) / 2;
        if (pull !== pulls[i]) changed = true;
        pulls[i] = pull;
      }
      if (!changed) break;
    }
    return promised;
  }

  private take(rows: RowBuilder): void {
    const { count } = rows;
    const n = this.lever.length;
    if (pulls.length < count) {
      begin = new Int32Array(2 * count + 1);
      value = new Float64Array(2 * count);
      equality = new Uint8Array(2 * count);
      pulls = new Uint8Array(2 * count);
    }
    if (column.length < count * n) {
      column = new Int32Array(2 * count * n);
      slope = new Float64Array(2 * count * n);
    }
    const gradients = rows.array;
    let used = 0;
    for (let i = 0; i < count; i++) {
      const at = i * n;
      for (let k = 0; k < n; k++) {
        const g = gradients[at + k]!;
        if (g === 0) continue;
        column[used] = k;
        slope[used++] = g;
      }
      begin[i + 1] = used;
      value[i] = rows.value(i);
      equality[i] = rows.isEquality(i) ? 1 : 0;
      pulls[i] = equality[i] === 1 || value[i]! < 0 ? 1 : 0;
    }
  }

  private solveGuess(count: number, stiffness: number): void {
    const { y, lever } = this;
    const n = lever.length;
    const H = normal;
    const b = right;
    const [begins, columns, slopes] = [begin, column, slope];
    H.fill(0, 0, n * n);
    b.fill(0, 0, n);
    for (let k = 0; k < n; k++) H[k * n + k] = stiffness * lever[k]! * lever[k]!;
    for (let i = 0; i < count; i++) {
      if (!pulls[i]) continue;
      const from = begins[i]!;
      const end = begins[i + 1]!;
      const missed = value[i]!;
      for (let k = from; k < end; k++) {
        const g = slopes[k]!;
        const r = columns[k]!;
        b[r] = b[r]! - g * missed;
        const row = r * n;
        for (let l = from; l <= k; l++) {
          const at = row + columns[l]!;
          H[at] = H[at]! + g * slopes[l]!;
        }
      }
    }
    factor(H, n, one, two);
    for (let r = 0; r < n; r++) {
      let sum = b[r]!;
      for (let k = 0; k < r; k++) sum -= H[r * n + k]! * y[k]!;
      y[r] = sum / H[r * n + r]!;
    }
    for (let r = n - 1; r >= 0; r--) {
      let sum = y[r]!;
      for (let k = r + 1; k < n; k++) sum -= H[k * n + r]! * y[k]!;
      y[r] = sum / H[r * n + r]!;
    }
  }
}

/**
 * Cholesky in place, lower triangle: what two columns take from those after them is taken at once, so that no sum waits for
 * the one before.
 * @param one, two room for a column each
 */
function factor(H: Float64Array, n: number, one: Float64Array, two: Float64Array): void {
  for (let k = 0; k < n; k += 2) {
    const next = k + 1;
    const first = Math.sqrt(Math.max(H[k * n + k]!, 1e-12));
    H[k * n + k] = first;
    if (next === n) return;
    const below = H[next * n + k]! / first;
    H[next * n + k] = below;
    const second = Math.sqrt(Math.max(H[next * n + next]! - below * below, 1e-12));
    H[next * n + next] = second;
    for (let r = k + 2; r < n; r++) {
      const own = r * n;
      const g = H[own + k]! / first;
      const h = (H[own + next]! - g * below) / second;
      H[own + k] = g;
      H[own + next] = h;
      one[r] = g;
      two[r] = h;
      if (g === 0 && h === 0) continue;
      for (let c = k + 2; c <= r; c++) H[own + c] = H[own + c]! - g * one[c]! - h * two[c]!;
    }
  }
}
