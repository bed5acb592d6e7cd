/**
 * How well a stretch of a closed line of points lies on a line or on a circle, each in constant time: sums of powers along
 * the line, taken once, give the normal equations of any stretch by a difference. Any one unit.
 */
import type { Point2 } from './loop';

/** Sums of 1, x, y, xx, xy, yy, xz, yz, zz with z = xx + yy; twice round, so that a stretch may pass the start. */
const POWERS = 9;

export type Runs = {
  /** Squared distances from the nearest line, summed over points `from` to `to` (both counted; `to` may pass the end). */
  line(from: number, to: number): number;
  /** The same from the nearest circle, by Kåsa's fit. */
  arc(from: number, to: number): number;
};

export function runsOf(points: readonly Point2[]): Runs {
  const n = points.length;
  const [ox, oy] = middleOf(points);
  const sums = new Float64Array(POWERS * (2 * n + 1));
  for (let k = 0; k < 2 * n; k++) {
    const x = points[k % n]![0] - ox;
    const y = points[k % n]![1] - oy;
    const z = x * x + y * y;
    const values = [1, x, y, x * x, x * y, y * y, x * z, y * z, z * z];
    for (let p = 0; p < POWERS; p++) sums[POWERS * (k + 1) + p] = sums[POWERS * k + p]! + values[p]!;
  }
  const s = new Float64Array(POWERS);
  const take = (from: number, to: number) => {
    for (let p = 0; p < POWERS; p++) s[p] = sums[POWERS * (to + 1) + p]! - sums[POWERS * from + p]!;
    const count = s[0]!;
    const [mx, my] = [s[1]! / count, s[2]! / count];
    const xx = Math.max(0, s[3]! - count * mx * mx);
    const xy = s[4]! - count * mx * my;
    const yy = Math.max(0, s[5]! - count * my * my);
    return { count, mx, my, xx, xy, yy };
  };
  return {
    line(from, to) {
      const { xx, xy, yy } = take(from, to);
      // The lesser eigenvalue of the scatter.
      return Math.max(0, (xx + yy - Math.hypot(xx - yy, 2 * xy)) / 2);
    },
    arc(from, to) {
      const { count, mx, my, xx, xy, yy } = take(from, to);
      const determinant = xx * yy - xy * xy;
      if (!(determinant > 1e-12 * (xx + yy) ** 2)) return Number.POSITIVE_INFINITY;
      const z = s[3]! + s[5]!;
      const xz = s[6]! - mx * z;
      const yz = s[7]! - my * z;
      const zz = s[8]! - (z * z) / count;
      // z ≈ a·x + b·y + c: centre (a, b)/2, and what is left over is (distance from the circle)·2r.
      const a = (xz * yy - yz * xy) / determinant;
      const b = (yz * xx - xz * xy) / determinant;
      const c = (z - a * s[1]! - b * s[2]!) / count;
      const squaredRadius = c + (a * a + b * b) / 4;
      return Math.max(0, zz - a * xz - b * yz) / (4 * squaredRadius);
    },
  };
}

function middleOf(points: readonly Point2[]): Point2 {
  const [sx, sy] = points.reduce(([x, y], [px, py]) => [x + px, y + py], [0, 0]);
  return [sx / points.length, sy / points.length];
}
