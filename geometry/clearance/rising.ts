/**
 * Distances to convex things together with the way they rise: the unit vector from the thing's nearest place to the place asked.
 * What is convex lies nowhere under the plane that touches it, so one look tells the least over a whole box or triangle, to the
 * second order where a scan's sheet runs along the thing. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import type { Disc } from './convexMinimum';
import { FrustumField } from './frustumField';

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

/** As `frustumShape` measures, inside as well. */
export function risingFromFrustum({ position, axis, length, startRadius, endRadius }: Frustum): Rising {
  const field = new FrustumField();
  field.set(position, axis, length, startRadius, endRadius);
  return (x, y, z, way) => {
    const value = field.at(x, y, z);
    way[0] = field.gx;
    way[1] = field.gy;
    way[2] = field.gz;
    return value;
  };
}
