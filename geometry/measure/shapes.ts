/**
 * Convex shapes that can be measured both ways: a distance field for others, and the least value of another's field over
 * them. Solids have signed fields; mouths and openings are flat, so nothing is inside them. mm, in the design's frame.
 */

import { MAX_LENGTH } from '../../shared/design/limits';
import type { Box, Capsule, Cylinder, Opening, Plane } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { minimumOnFrustum } from '../clearance/bodies';
import { type Field, type Minimum, minimumOnDisc, minimumOnInterval } from '../clearance/convexMinimum';
import { pointToDisc } from '../clearance/discs';
import { boxShape, type ConvexShape, capsuleShape, frustumShape, planeShape, slopeOf } from '../clearance/shapes';
import type { Frustum, Pose } from '../header/merge';
import { addScaled, cross, distance, lerp, sub, unit } from '../vector';

export type Convex = ConvexShape & {
  /** Least value over the shape of a convex field, and where on the shape's surface it is had. */
  least(field: Field): Minimum;
};

/** The place nearest to `p` where a distance field is zero; exact outside a convex body, where such a field is smooth. */
export function nearestOn(field: Field, p: Vec3): Vec3 {
  return addScaled(p, slopeOf(field, ...p), -field(...p));
}

export const pointConvex = (at: Vec3): Convex => ({
  ...capsuleShape({ a: at, b: at, radius: 0 }),
  least: (field) => ({ value: field(...at), at }),
});

export function capsuleConvex(capsule: Pick<Capsule, 'a' | 'b' | 'radius'>): Convex {
  const { a, b, radius } = capsule;
  return {
    ...capsuleShape(capsule),
    least(field) {
      const axis = (t: number) => field(...lerp(a, b, t));
      const { value, t } = minimumOnInterval(axis, 0, 1);
      const on = lerp(a, b, t);
      return { value: value - radius, at: addScaled(on, slopeOf(field, ...on), -radius) };
    },
  };
}

export function boxConvex({ min, max }: Pick<Box, 'min' | 'max'>): Convex {
  return {
    ...boxShape({ min, max }),
    least(field) {
      const row = (x: number, y: number) => minimumOnInterval((z) => field(x, y, z), min[2], max[2]);
      const sheet = (x: number) => minimumOnInterval((y) => row(x, y).value, min[1], max[1]);
      const x = minimumOnInterval((s) => sheet(s).value, min[0], max[0]).t;
      const y = sheet(x).t;
      const { value, t } = row(x, y);
      return { value, at: [x, y, t] };
    },
  };
}

export function cylinderConvex({ a, b, radius }: Pick<Cylinder, 'a' | 'b' | 'radius'>): Convex {
  const length = distance(a, b);
  return frustumConvex({ position: a, axis: unit(sub(b, a)), length, startRadius: radius, endRadius: radius });
}

/** Half of space; sought over as far as anything of a design may lie. */
export const planeConvex = ({ position, normal }: Pick<Plane, 'position' | 'normal'>): Convex => ({
  ...planeShape({ position, normal }),
  least: (field) => minimumOnDisc(field, { centre: position, normal: unit(normal), radius: MAX_LENGTH }),
});

export const frustumConvex = (body: Frustum): Convex => ({
  ...frustumShape(body),
  least: (field) => minimumOnFrustum(field, body),
});

/** A flat round mouth, such as a collector's inlet or a bolt hole. */
export function discConvex(centre: Vec3, normal: Vec3, radius: number): Convex {
  const disc = { centre, normal, radius };
  return {
    centre,
    reach: radius,
    signedDistance: (x, y, z) => pointToDisc(disc, x, y, z),
    least: (field) => minimumOnDisc(field, disc),
  };
}

/** A port's opening as the flat shape that it is: every one of them is a rectangle with rounded corners. */
export function openingConvex({ position, direction, up }: Pose, opening: Opening): Convex {
  const across = cross(up, direction);
  const [w, h, r] = halfSizes(opening);
  const halfWidth = (y: number) => {
    const over = Math.max(0, Math.abs(y) - (h - r));
    return w - r + Math.sqrt(Math.max(0, r * r - over * over));
  };
  const place = (x: number, y: number): Vec3 => addScaled(addScaled(position, across, x), up, y);
  return {
    centre: position,
    reach: Math.hypot(w, h),
    signedDistance(px, py, pz) {
      const [dx, dy, dz] = [px - position[0], py - position[1], pz - position[2]];
      const along = (axis: Vec3) => dx * axis[0] + dy * axis[1] + dz * axis[2];
      const qx = Math.max(0, Math.abs(along(across)) - (w - r));
      const qy = Math.max(0, Math.abs(along(up)) - (h - r));
      return Math.hypot(along(direction), Math.max(0, Math.hypot(qx, qy) - r));
    },
    least(field) {
      const row = (y: number) => minimumOnInterval((x) => field(...place(x, y)), -halfWidth(y), halfWidth(y));
      const y = minimumOnInterval((t) => row(t).value, -h, h).t;
      const { value, t } = row(y);
      return { value, at: place(t, y) };
    },
  };
}

/** Half width, half height and corner radius. */
function halfSizes(opening: Opening): readonly [number, number, number] {
  if (opening.shape === 'round') return [opening.diameter / 2, opening.diameter / 2, opening.diameter / 2];
  const [w, h] = [opening.width / 2, opening.height / 2];
  return [w, h, opening.shape === 'oval' ? Math.min(w, h) : Math.min(opening.corner, w, h)];
}
