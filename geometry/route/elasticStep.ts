/**
 * The step of an elastic least-squares program: rules pull back in proportion to what they would be missed by after the
 * step, ½·λ·|y|² + ½·Σ (v + g·y)² over equalities and over inequalities that would end below 0. Unlike least distance it
 * gives a sensible step where rules contradict each other, as they do far from any layout.
 *
 * Solved by semi-smooth Newton: guess which rules pull, solve the normal equations, look again; a few guesses suffice.
 */
import type { RowBuilder } from '../layout/rowBuilder';

const GUESSES = 8;

export class ElasticStep {
  private readonly normal: Float64Array;
  private readonly right: Float64Array;
  readonly y: Float64Array;
  private first = new Int32Array(0);
  private last = new Int32Array(0);
  private pulls = new Uint8Array(0);

  /** @param lever what a step of each unknown moves, mm */
  constructor(private readonly lever: Float64Array) {
    const n = lever.length;
    this.normal = new Float64Array(n * n);
    this.right = new Float64Array(n);
    this.y = new Float64Array(n);
  }

  /**
   * The step in the unknowns' own units, into `y`.
   * @returns half the sum of squares that the linearised rules promise to leave
   */
  solve(rows: RowBuilder, stiffness: number): number {
    const { count } = rows;
    const n = this.lever.length;
    const gradients = rows.array;
    this.reserve(count);
    const { first, last, pulls, y } = this;
    for (let i = 0; i < count; i++) {
      let low = 0;
      let high = n - 1;
      while (low < n && gradients[i * n + low] === 0) low++;
      while (high > low && gradients[i * n + high] === 0) high--;
      first[i] = low;
      last[i] = high;
      pulls[i] = rows.isEquality(i) || rows.value(i) < 0 ? 1 : 0;
    }
    let promised = 0;
    for (let guess = 0; guess < GUESSES; guess++) {
      this.solveGuess(rows, stiffness);
      let changed = false;
      promised = 0;
      for (let i = 0; i < count; i++) {
        let after = rows.value(i);
        for (let k = first[i]!; k <= last[i]!; k++) after += gradients[i * n + k]! * y[k]!;
        const pull = rows.isEquality(i) || after < 0 ? 1 : 0;
        if (pull) promised += (after * after) / 2;
        if (pull !== pulls[i]) changed = true;
        pulls[i] = pull;
      }
      if (!changed) break;
    }
    return promised;
  }

  private reserve(count: number): void {
    if (this.pulls.length >= count) return;
    this.first = new Int32Array(2 * count);
    this.last = new Int32Array(2 * count);
    this.pulls = new Uint8Array(2 * count);
  }

  private solveGuess(rows: RowBuilder, stiffness: number): void {
    const { normal: H, right: b, y, lever, first, last, pulls } = this;
    const n = lever.length;
    const gradients = rows.array;
    H.fill(0);
    b.fill(0);
    for (let k = 0; k < n; k++) H[k * n + k] = stiffness * lever[k]! * lever[k]!;
    for (let i = 0; i < rows.count; i++) {
      if (!pulls[i]) continue;
      const at = i * n;
      const value = rows.value(i);
      for (let r = first[i]!; r <= last[i]!; r++) {
        const g = gradients[at + r]!;
        if (g === 0) continue;
        b[r] = b[r]! - g * value;
        for (let c = first[i]!; c <= r; c++) H[r * n + c] = H[r * n + c]! + g * gradients[at + c]!;
      }
    }
    factor(H, n);
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

/** Cholesky in place, lower triangle. */
function factor(H: Float64Array, n: number): void {
  for (let r = 0; r < n; r++)
    for (let c = 0; c <= r; c++) {
      let sum = H[r * n + c]!;
      for (let k = 0; k < c; k++) sum -= H[r * n + k]! * H[c * n + k]!;
      H[r * n + c] = r === c ? Math.sqrt(Math.max(sum, 1e-12)) : sum / H[c * n + c]!;
    }
}
