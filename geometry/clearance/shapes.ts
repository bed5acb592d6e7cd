/**
 * Signed distance to the convex solids of the contract: capsule, box, frustum. mm; negative inside. Each field is convex
 * and 1-Lipschitz, which is all that the searches over tubes and discs rely on.
 */
import type { Box, Capsule, Cylinder, Plane } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import { addScaled, distance, dot, lerp, norm, sub, unit } from '../vector';
import type { Field } from './convexMinimum';
import { type Closest, closestOnSegments } from './segments';

export type ConvexShape = {
  readonly signedDistance: Field;
  /** A sphere around it, so that what is far away is not measured. */
  readonly centre: Vec3;
  readonly reach: number;
  /** The box around it where it is known: low x, y, z, high x, y, z. */
  readonly bounds?: Float64Array;
  /** Of a box: its middle and half its width along each axis. */
  readonly box?: Float64Array;
  /**
   * Where on the segment a + t·d, t in [0, 1], the field is least: in closed form, where the shape has one. NaN where only
   * a search can tell, as within the shape.
   */
  readonly leastOn?: (a: ArrayLike<number>, i: number, dx: number, dy: number, dz: number) => number;
};

const closest: Closest = { squared: 0, s: 0, t: 0 };

/** Step of the central differences below: fields are straight over it but for kinks, mm. */
const PROBE = 1e-4;

/** Slope of a field at a place, by central differences. */
export function slopeOf(f: Field, x: number, y: number, z: number): Vec3 {
  const h = 2 * PROBE;
  return [
    (f(x + PROBE, y, z) - f(x - PROBE, y, z)) / h,
    (f(x, y + PROBE, z) - f(x, y - PROBE, z)) / h,
    (f(x, y, z + PROBE) - f(x, y, z - PROBE)) / h,
  ];
}

export function capsuleShape({ a, b, radius }: Pick<Capsule, 'a' | 'b' | 'radius'>): ConvexShape {
  const [dx, dy, dz] = sub(b, a);
  const lengthSquared = dx * dx + dy * dy + dz * dz;
  const axis = Float64Array.of(...a, ...b);
  const chord = new Float64Array(6);
  return {
    centre: lerp(a, b, 0.5),
    reach: distance(a, b) / 2 + radius,
    bounds: Float64Array.of(
      Math.min(a[0], b[0]) - radius,
      Math.min(a[1], b[1]) - radius,
      Math.min(a[2], b[2]) - radius,
      Math.max(a[0], b[0]) + radius,
      Math.max(a[1], b[1]) + radius,
      Math.max(a[2], b[2]) + radius,
    ),
    leastOn(P, i, ex, ey, ez) {
      for (let k = 0; k < 3; k++) chord[k] = P[i + k]!;
      chord[3] = P[i]! + ex;
      chord[4] = P[i + 1]! + ey;
      chord[5] = P[i + 2]! + ez;
      closestOnSegments(chord, 0, 1, axis, 0, 1, closest);
      return closest.s;
    },
    signedDistance(x, y, z) {
      const px = x - a[0];
      const py = y - a[1];
      const pz = z - a[2];
      const t = lengthSquared > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy + pz * dz) / lengthSquared)) : 0;
      const qx = px - t * dx;
      const qy = py - t * dy;
      const qz = pz - t * dz;
      return Math.sqrt(qx * qx + qy * qy + qz * qz) - radius;
    },
  };
}

export function boxShape({ min, max }: Pick<Box, 'min' | 'max'>): ConvexShape {
  const centre = lerp(min, max, 0.5);
  const hx = (max[0] - min[0]) / 2;
  const hy = (max[1] - min[1]) / 2;
  const hz = (max[2] - min[2]) / 2;
  const box = Float64Array.of(...centre, hx, hy, hz);
  return {
    centre,
    reach: norm([hx, hy, hz]),
    bounds: Float64Array.of(...min, ...max),
    box,
    leastOn: (P, i, dx, dy, dz) => leastOverBox(box, P, i, dx, dy, dz),
    signedDistance: (x, y, z) => distanceToBox(box, x, y, z),
  };
}

/** @param box as in `ConvexShape` */
export function distanceToBox(box: Float64Array, x: number, y: number, z: number): number {
  const qx = Math.abs(x - box[0]!) - box[3]!;
  const qy = Math.abs(y - box[1]!) - box[4]!;
  const qz = Math.abs(z - box[2]!) - box[5]!;
  const ox = Math.max(qx, 0);
  const oy = Math.max(qy, 0);
  const oz = Math.max(qz, 0);
  const inside = qx > qy ? Math.max(qx, qz) : Math.max(qy, qz);
  return Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(inside, 0);
}

/**
 * Where on the segment a + t·d a box is nearest; NaN within it. The squared distance has a slope that rises, piece by piece
 * straight: its zero is bracketed and closed in on by false position.
 */
export function leastOverBox(
  box: Float64Array,
  a: ArrayLike<number>,
  i: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  const x = a[i]! - box[0]!;
  const y = a[i + 1]! - box[1]!;
  const z = a[i + 2]! - box[2]!;
  const hx = box[3]!;
  const hy = box[4]!;
  const hz = box[5]!;
  let low = 0;
  let high = 1;
  let atLow = dx * beyond(x, hx) + dy * beyond(y, hy) + dz * beyond(z, hz);
  let atHigh = dx * beyond(x + dx, hx) + dy * beyond(y + dy, hy) + dz * beyond(z + dz, hz);
  let t = atLow >= 0 ? 0 : 1;
  if (atLow < 0 && atHigh > 0)
    for (let k = 0; k < ROOT_STEPS; k++) {
      t = k % 3 === 2 ? (low + high) / 2 : low + ((high - low) * atLow) / (atLow - atHigh);
      const at = dx * beyond(x + t * dx, hx) + dy * beyond(y + t * dy, hy) + dz * beyond(z + t * dz, hz);
      if (at === 0 || high - low < ROOT_WIDTH) break;
      if (at < 0) {
        low = t;
        atLow = at;
      } else {
        high = t;
        atHigh = at;
      }
    }
  const inside = Math.abs(x + t * dx) <= hx && Math.abs(y + t * dy) <= hy && Math.abs(z + t * dz) <= hz;
  return inside ? Number.NaN : t;
}

const ROOT_STEPS = 24;
const ROOT_WIDTH = 1e-7;

/** How far a place is past either side of a width about 0, signed. */
export const beyond = (p: number, half: number): number => (p > half ? p - half : p < -half ? p + half : 0);

/** A bar with flat ends. */
export function cylinderShape({ a, b, radius }: Pick<Cylinder, 'a' | 'b' | 'radius'>): ConvexShape {
  const axis = unit(sub(b, a));
  return frustumShape({ position: a, axis, length: distance(a, b), startRadius: radius, endRadius: radius });
}

/** Half of space: nothing is far from it, so its sphere is endless. */
export function planeShape({ position, normal }: Pick<Plane, 'position' | 'normal'>): ConvexShape {
  const [nx, ny, nz] = unit(normal);
  const offset = dot([nx, ny, nz], position);
  const height = (x: number, y: number, z: number): number => x * nx + y * ny + z * nz - offset;
  return {
    centre: position,
    reach: Number.POSITIVE_INFINITY,
    signedDistance: height,
    leastOn: (_P, _i, dx, dy, dz) => (dx * nx + dy * ny + dz * nz < 0 ? 1 : 0),
  };
}

/** Solid of revolution: in (radius, height) the distance to a trapezium, positive outside. */
export function frustumShape({ position, axis, length, startRadius, endRadius }: Frustum): ConvexShape {
  const slope = endRadius - startRadius;
  const slant = Math.hypot(slope, length);
  return {
    centre: addScaled(position, axis, length / 2),
    reach: Math.hypot(length / 2, Math.max(startRadius, endRadius)),
    signedDistance(x, y, z) {
      const px = x - position[0];
      const py = y - position[1];
      const pz = z - position[2];
      const h = px * axis[0] + py * axis[1] + pz * axis[2];
      const rho = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - h * h));
      const wall = ((rho - startRadius) * length - h * slope) / slant;
      const beyond = Math.max(-h, h - length);
      if (wall <= 0 && beyond <= 0) return Math.max(wall, beyond);
      const along = Math.min(1, Math.max(0, ((rho - startRadius) * slope + h * length) / (slant * slant)));
      const toWall = Math.hypot(rho - startRadius - along * slope, h - along * length);
      const toStart = Math.hypot(Math.max(0, rho - startRadius), h);
      const toEnd = Math.hypot(Math.max(0, rho - endRadius), h - length);
      return Math.min(toWall, toStart, toEnd);
    },
  };
}
