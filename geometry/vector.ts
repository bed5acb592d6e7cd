/** Plain vector arithmetic on immutable triples. Nothing here knows about tubes. */
import type { Vec3 } from '../shared/vec3';

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
// Math.hypot guards against overflow that cannot happen here, and costs many times a square root.
export const norm = (a: Vec3): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
export const distance = (a: Vec3, b: Vec3): number => {
  const x = a[0] - b[0];
  const y = a[1] - b[1];
  const z = a[2] - b[2];
  return Math.sqrt(x * x + y * y + z * z);
};

/** a + k·b */
export const addScaled = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];

/** a + t·(b − a) */
export const lerp = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Unit vector along `a`; the zero vector stays zero, so that a degenerate leg can still be reported rather than be NaN. */
export const unit = (a: Vec3): Vec3 => {
  const n = norm(a);
  return n > 0 ? [a[0] / n, a[1] / n, a[2] / n] : [0, 0, 0];
};

/** The part of `a` square to the unit vector `axis`, not normalised. */
export const reject = (a: Vec3, axis: Vec3): Vec3 => addScaled(a, axis, -dot(a, axis));

/** Angle between two vectors, radians in [0, π]; accurate at both ends, where acos is not. */
export const angleBetween = (a: Vec3, b: Vec3): number => {
  const x = a[1] * b[2] - a[2] * b[1];
  const y = a[2] * b[0] - a[0] * b[2];
  const z = a[0] * b[1] - a[1] * b[0];
  return Math.atan2(Math.sqrt(x * x + y * y + z * z), a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
};

/** Angle from `a` to `b` about the unit `axis`, right-handed, radians in (−π, π]; both are projected square to the axis. */
export const signedAngle = (a: Vec3, b: Vec3, axis: Vec3): number =>
  Math.atan2(dot(cross(a, b), axis), dot(a, b) - dot(a, axis) * dot(b, axis));

/** Rotates `v` about the unit `axis` by `angle` radians, right-handed (Rodrigues' formula). */
export const rotate = (v: Vec3, axis: Vec3, angle: number): Vec3 => {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot(axis, v) * (1 - c);
  const w = cross(axis, v);
  return [v[0] * c + w[0] * s + axis[0] * k, v[1] * c + w[1] * s + axis[1] * k, v[2] * c + w[2] * s + axis[2] * k];
};

/** Some unit vector square to the unit vector `a`, chosen without branching surprises: from the axis least along `a`. */
export const anySquareTo = (a: Vec3): Vec3 => {
  const m = [Math.abs(a[0]), Math.abs(a[1]), Math.abs(a[2])];
  const k = m[0]! <= m[1]! && m[0]! <= m[2]! ? 0 : m[1]! <= m[2]! ? 1 : 2;
  const e: Vec3 = [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0];
  return unit(reject(e, a));
};

/** The same but for one of its three numbers. */
export const withAxis = (v: Vec3, axis: 0 | 1 | 2, value: number): Vec3 =>
  axis === 0 ? [value, v[1], v[2]] : axis === 1 ? [v[0], value, v[2]] : [v[0], v[1], value];
