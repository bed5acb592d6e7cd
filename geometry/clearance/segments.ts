/**
 * Closest points of two straight segments, on flat number arrays so that the searches allocate nothing.
 * Method: the unconstrained minimum clamped to the square of both parameters (Ericson, Real-Time Collision Detection, 5.1.9).
 */

/** Result slot, reused: squared distance and the parameters in [0, 1] of the closest points. */
export type Closest = { squared: number; s: number; t: number };

/** Segment from P[i] to P[j] against Q[k] to Q[l]; indices count points (three numbers each). */
export function closestOnSegments(
  P: Float64Array,
  i: number,
  j: number,
  Q: Float64Array,
  k: number,
  l: number,
  out: Closest,
): void {
  const px = P[3 * i]!;
  const py = P[3 * i + 1]!;
  const pz = P[3 * i + 2]!;
  const ux = P[3 * j]! - px;
  const uy = P[3 * j + 1]! - py;
  const uz = P[3 * j + 2]! - pz;
  const qx = Q[3 * k]!;
  const qy = Q[3 * k + 1]!;
  const qz = Q[3 * k + 2]!;
  const vx = Q[3 * l]! - qx;
  const vy = Q[3 * l + 1]! - qy;
  const vz = Q[3 * l + 2]! - qz;
  const rx = px - qx;
  const ry = py - qy;
  const rz = pz - qz;
  const a = ux * ux + uy * uy + uz * uz;
  const e = vx * vx + vy * vy + vz * vz;
  const f = vx * rx + vy * ry + vz * rz;
  const c = ux * rx + uy * ry + uz * rz;
  const b = ux * vx + uy * vy + uz * vz;
  const denominator = a * e - b * b;
  let s = 0;
  let t = 0;
  if (a > 0 && e > 0) {
    // Nearly parallel: any s will do to begin with; the middle keeps ties away from the ends.
    s = denominator > 1e-12 * a * e ? clamp01((b * f - c * e) / denominator) : 0.5;
    t = (b * s + f) / e;
    if (t < 0) {
      t = 0;
      s = clamp01(-c / a);
    } else if (t > 1) {
      t = 1;
      s = clamp01((b - c) / a);
    } else {
      s = clamp01((b * t - c) / a);
    }
  } else if (a > 0) {
    s = clamp01(-c / a);
  } else if (e > 0) {
    t = clamp01(f / e);
  }
  const dx = rx + s * ux - t * vx;
  const dy = ry + s * uy - t * vy;
  const dz = rz + s * uz - t * vz;
  out.squared = dx * dx + dy * dy + dz * dz;
  out.s = s;
  out.t = t;
}

const clamp01 = (x: number): number => (x < 0 ? 0 : Math.min(x, 1));
