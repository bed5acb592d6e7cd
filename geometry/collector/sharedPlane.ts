/** What two tubes of one size share whose axes lie in one plane: the plane as far from both. mm; unit vectors; the collector's frame. */
import type { Vec3 } from '../../shared/vec3';
import type { CutPlane } from '../solid/cutTube';
import { ANGLE_TOLERANCE } from '../tolerance';
import { addScaled, cross, dot, norm, reject, sub, unit } from '../vector';

type Axis = { readonly position: Vec3; readonly direction: Vec3 };

/** The side of `own` stays. `meet` is false where the axes run side by side: such tubes may touch, but are not cut. */
export function sharedPlane(own: Axis, other: Axis): CutPlane & { readonly meet: boolean } {
  const apart = sub(other.position, own.position);
  const lean = sub(own.direction, other.direction);
  const meet = norm(lean) >= ANGLE_TOLERANCE;
  const normal = meet ? unit(lean) : unit(reject(apart, own.direction));
  const on = meet ? crossingOf(own, other) : addScaled(own.position, apart, 0.5);
  return { normal, offset: dot(normal, on), meet };
}

/** Where two axes of one plane meet. */
function crossingOf(a: Axis, b: Axis): Vec3 {
  const square = cross(a.direction, b.direction);
  const along = dot(cross(sub(b.position, a.position), b.direction), square) / dot(square, square);
  return addScaled(a.position, a.direction, along);
}

/**
 * How far the square end of a tube reaches through that plane, where positive, and by how much its inlets' places would
 * have to grow for it not to.
 */
export function reachThrough(own: Axis, other: Axis, radius: number): { by: number; grow: number } {
  const { normal, offset } = sharedPlane(own, other);
  const rim = radius * norm(reject(normal, own.direction));
  // With all places scaled alike about the axis the plane moves off in the same measure.
  const room = offset - dot(normal, own.position);
  return { by: rim - room, grow: rim / room };
}
