/**
 * Distances to convex things together with the way they rise: the unit vector from the thing's nearest place to the place asked.
 * What is convex lies nowhere under the plane that touches it, so one look tells the least over a whole box or triangle, to the
 * second order where a scan's sheet runs along the thing. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import type { Disc } from './convexMinimum';

/**
 * A convex distance, negative or nothing inside.
 * @param way three numbers: which way it rises fastest there, unit; of no meaning where the distance is not positive
 */
export type Rising = (x: number, y: number, z: number, way: Float64Array) => number;

export function risingFromDisc({ centre, normal, radius }: Disc): Rising {
  return (x, y, z, way) => {
    const px = x - centre[0];
    const py = y - centre[1];
    const pz = z - centre[2];
    const height = px * normal[0] + py * normal[1] + pz * normal[2];
    const across = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - height * height));
    const off = Math.sqrt(height * height + Math.max(0, across - radius) ** 2);
    if (off > 0) {
      const outward = across > radius ? (across - radius) / across / off : 0;
      const along = height / off - outward * height;
      way[0] = outward * px + along * normal[0];
      way[1] = outward * py + along * normal[1];
      way[2] = outward * pz + along * normal[2];
    }
    return off;
  };
}

/** From the segment that leaves `start` by `d`. */
export function risingFromSegment(start: Vec3, d: Vec3): Rising {
  const squared = d[0] * d[0] + d[1] * d[1] + d[2] * d[2];
  return (x, y, z, way) => {
    const px = x - start[0];
    const py = y - start[1];
    const pz = z - start[2];
    const t = squared > 0 ? Math.min(1, Math.max(0, (px * d[0] + py * d[1] + pz * d[2]) / squared)) : 0;
    const [qx, qy, qz] = [px - t * d[0], py - t * d[1], pz - t * d[2]];
    const off = Math.sqrt(qx * qx + qy * qy + qz * qz);
    if (off > 0) {
      way[0] = qx / off;
      way[1] = qy / off;
      way[2] = qz / off;
    }
    return off;
  };
}

/** As `frustumShape` measures, by the nearest place of its section. */
export function risingFromFrustum({ position, axis, length, startRadius, endRadius }: Frustum): Rising {
  const slope = endRadius - startRadius;
  const slant = Math.hypot(slope, length);
  return (x, y, z, way) => {
    const px = x - position[0];
    const py = y - position[1];
    const pz = z - position[2];
    const h = px * axis[0] + py * axis[1] + pz * axis[2];
    const rho = Math.sqrt(Math.max(0, px * px + py * py + pz * pz - h * h));
    const wall = ((rho - startRadius) * length - h * slope) / slant;
    const beyond = Math.max(-h, h - length);
    if (wall <= 0 && beyond <= 0) return Math.max(wall, beyond);
    const along = Math.min(1, Math.max(0, ((rho - startRadius) * slope + h * length) / (slant * slant)));
    let out = rho - startRadius - along * slope;
    let up = h - along * length;
    let off = Math.sqrt(out * out + up * up);
    for (const [radius, height] of [
      [startRadius, h],
      [endRadius, h - length],
    ] as const) {
      const past = Math.max(0, rho - radius);
      const far = Math.sqrt(past * past + height * height);
      if (far < off) [off, out, up] = [far, past, height];
    }
    if (off > 0) {
      const outward = rho > 0 ? out / off / rho : 0;
      const upward = up / off - outward * h;
      way[0] = outward * px + upward * axis[0];
      way[1] = outward * py + upward * axis[1];
      way[2] = outward * pz + upward * axis[2];
    }
    return off;
  };
}
