/**
 * Signed distance to the convex solids of the contract: capsule, box, frustum. mm; negative inside. Each field is convex
 * and 1-Lipschitz, which is all that the searches over tubes and discs rely on.
 */
import type { Box, Capsule } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import { addScaled, distance, lerp, norm, sub } from '../vector';
import type { Field } from './convexMinimum';

export type ConvexShape = {
  readonly signedDistance: Field;
  /** A sphere around it, so that what is far away is not measured. */
  readonly centre: Vec3;
  readonly reach: number;
};

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
  return {
    centre: lerp(a, b, 0.5),
    reach: distance(a, b) / 2 + radius,
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
  return {
    centre,
    reach: norm([hx, hy, hz]),
    signedDistance(x, y, z) {
      const qx = Math.abs(x - centre[0]) - hx;
      const qy = Math.abs(y - centre[1]) - hy;
      const qz = Math.abs(z - centre[2]) - hz;
      const ox = Math.max(qx, 0);
      const oy = Math.max(qy, 0);
      const oz = Math.max(qz, 0);
      const inside = qx > qy ? Math.max(qx, qz) : Math.max(qy, qz);
      return Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(inside, 0);
    },
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
