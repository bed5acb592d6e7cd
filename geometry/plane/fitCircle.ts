/**
 * The circle nearest to points, by least squares of their distances: begun by Kåsa's algebraic fit (IEEE Trans. Instrum.
 * Meas. 25, 1976, 8–14), brought home by Gauss and Newton's steps. Any one unit.
 */
import type { Point2 } from './loop';

export type Circle = { readonly centre: Point2; readonly radius: number };

/** Null where they lie on a line, or are fewer than three. */
export function fitCircle(points: readonly Point2[]): Circle | null {
  const n = points.length;
  if (n < 3) return null;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [sxx, sxy, syy, sxz, syz, sz] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [x, y] = [px - mx, py - my];
    const z = x * x + y * y;
    sxx += x * x;
    sxy += x * y;
    syy += y * y;
    sxz += x * z;
    syz += y * z;
    sz += z;
  }
  const determinant = sxx * syy - sxy * sxy;
  if (!(determinant > 1e-12 * (sxx + syy) ** 2)) return null;
  let cx = (sxz * syy - syz * sxy) / (2 * determinant);
  let cy = (syz * sxx - sxz * sxy) / (2 * determinant);
  let radius = Math.sqrt(cx * cx + cy * cy + sz / n);
  for (let step = 0; step < 8; step++) {
    const moved = gaussNewton(points, [mx + cx, my + cy], radius);
    if (!moved) break;
    cx += moved[0];
    cy += moved[1];
    radius += moved[2];
    if (Math.hypot(...moved) < 1e-9 * radius) break;
  }
  return Number.isFinite(cx + cy + radius) && radius > 0 ? { centre: [mx + cx, my + cy], radius } : null;
}

/** Distances d − r change by −cos, −sin and −1 with the centre and the radius: three normal equations, by Cramer's rule. */
function gaussNewton(points: readonly Point2[], [cx, cy]: Point2, r: number): [number, number, number] | null {
  let [a, b, c, d, e, u, v, w] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const away = Math.hypot(x - cx, y - cy);
    if (away === 0) return null;
    const [p, q] = [(x - cx) / away, (y - cy) / away];
    const miss = away - r;
    a += p * p;
    b += p * q;
    c += q * q;
    d += p;
    e += q;
    u += p * miss;
    v += q * miss;
    w += miss;
  }
  const n = points.length;
  const whole = a * (c * n - e * e) - b * (b * n - e * d) + d * (b * e - c * d);
  if (Math.abs(whole) < 1e-14 * n ** 3) return null;
  return [
    (u * (c * n - e * e) - b * (v * n - e * w) + d * (v * e - c * w)) / whole,
    (a * (v * n - w * e) - u * (b * n - e * d) + d * (b * w - v * d)) / whole,
    (a * (c * w - e * v) - b * (b * w - v * d) + u * (b * e - c * d)) / whole,
  ];
}
