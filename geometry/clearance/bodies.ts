/**
 * Least gap between a merge's body and another solid: the least value of the other's convex distance field over the
 * frustum. mm; negative by how deep the frustum reaches in.
 */
import type { Frustum } from '../header/merge';
import { addScaled, distance, dot } from '../vector';
import { type Field, type Minimum, minimumOnDisc, minimumOnInterval, minimumOnTriangle } from './convexMinimum';
import { risingFromFrustum } from './rising';
import { type ConvexShape, frustumShape, slopeOf } from './shapes';
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

export function bodyToMesh(body: Frustum, tree: TriangleTree, below = Number.POSITIVE_INFINITY): Minimum | null {
  const own = frustumShape(body).signedDistance;
  let best = glimpsed(own, slicesOf(body).map(frustumShape), tree, below);
  tree.visitWhere(
    risingFromFrustum(body),
    () => best?.value ?? below,
    (a, b, c) => {
      const found = minimumOnTriangle(own, a, b, c);
      if (found.value < (best?.value ?? below)) best = found;
    },
  );
  return best;
}

/** What lies nearest to the middles of slices: a good first answer spares most of the search. */
function glimpsed(field: Field, slices: readonly ConvexShape[], tree: TriangleTree, below: number): Minimum | null {
  let best: Minimum | null = null;
  const foot = new Float64Array(3);
  for (const { centre, reach } of slices) {
    if (tree.nearest(...centre, below + reach, foot) === Number.POSITIVE_INFINITY) continue;
    const value = field(foot[0]!, foot[1]!, foot[2]!);
    if (value < (best?.value ?? below)) best = { value, at: [foot[0]!, foot[1]!, foot[2]!] };
  }
  return best;
}

/** About as long as wide, so that the spheres about them hold little else. */
function slicesOf(body: Frustum): Frustum[] {
  const count = Math.max(1, Math.ceil(body.length / (2 * Math.max(body.startRadius, body.endRadius))));
  const radius = (k: number): number => body.startRadius + (k / count) * (body.endRadius - body.startRadius);
  return Array.from({ length: count }, (_, k) => ({
    position: addScaled(body.position, body.axis, (k * body.length) / count),
    axis: body.axis,
    length: body.length / count,
    startRadius: radius(k),
    endRadius: radius(k + 1),
  }));
}
