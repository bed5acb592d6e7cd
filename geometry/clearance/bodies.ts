/**
 * Least gap between a merge's body and another solid: the least value of the other's convex distance field over the
 * frustum. mm; negative by how deep the frustum reaches in.
 */
import type { Frustum } from '../header/merge';
import { addScaled, distance, dot } from '../vector';
import { type Field, type Minimum, minimumOnDisc, minimumOnInterval } from './convexMinimum';
import { type ConvexShape, frustumShape, slopeOf } from './shapes';
import { nearestToFrustum } from './skinPlaces';
import type { TriangleTree } from './triangleTree';

/** @returns null where the two are not nearer than `below` */
export function bodyToShape(body: Frustum, shape: ConvexShape, below = Number.POSITIVE_INFINITY): Minimum | null {
  const own = frustumShape(body);
  if (distance(own.centre, shape.centre) - own.reach - shape.reach >= below) return null;
  if (leastPossible(body, shape) >= below) return null;
  const found = minimumOnFrustum(shape.signedDistance, body);
  return found.value < below ? found : null;
}

/**
 * A cheap first look. Outside a shape its convex field is smooth, and nowhere under the plane that touches it where the axis
 * comes nearest; over a frustum that plane is least on the rim of an end.
 */
function leastPossible({ position, axis, length, startRadius, endRadius }: Frustum, shape: ConvexShape): number {
  const { signedDistance } = shape;
  const { value, t } = minimumOnInterval((h) => signedDistance(...addScaled(position, axis, h)), 0, length, NEAR);
  if (value < APART) return Number.NEGATIVE_INFINITY;
  const slope = slopeOf(signedDistance, ...addScaled(position, axis, t));
  const along = dot(slope, axis);
  const across = Math.sqrt(Math.max(0, dot(slope, slope) - along * along));
  const start = -t * along - startRadius * across;
  const end = (length - t) * along - endRadius * across;
  return value + Math.min(start, end) - ROUNDING;
}

/** Any place of the axis will do, the nearest best. */
const NEAR = 1e-3;
/** Nearer than this, mm, the field bends too sharply for its slope by differences; further off that is good to `ROUNDING`. */
const APART = 0.1;
const ROUNDING = 1e-3;

/** Discs along the axis, widest where the field is least: convex in the height, as the frustum is convex. */
export function minimumOnFrustum(f: Field, { position, axis, length, startRadius, endRadius }: Frustum): Minimum {
  const slice = (h: number): Minimum =>
    minimumOnDisc(f, {
      centre: addScaled(position, axis, h * length),
      normal: axis,
      radius: startRadius + h * (endRadius - startRadius),
    });
  return slice(minimumOnInterval((h) => slice(h).value, 0, 1).t);
}

export const bodyToMesh = (body: Frustum, tree: TriangleTree, below = Number.POSITIVE_INFINITY): Minimum | null =>
  nearestToFrustum(body, tree, below);
