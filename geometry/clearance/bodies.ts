/**
 * Least gap between a merge's body and another solid: the least value of the other's convex distance field over the
 * frustum. mm; negative by how deep the frustum reaches in.
 */
import type { Frustum } from '../header/merge';
import { addScaled, distance } from '../vector';
import { type Field, type Minimum, minimumOnDisc, minimumOnInterval, minimumOnTriangle } from './convexMinimum';
import { type ConvexShape, frustumShape } from './shapes';
import type { TriangleTree } from './triangleTree';

/** @returns null where the two are not nearer than `below` */
export function bodyToShape(body: Frustum, shape: ConvexShape, below = Number.POSITIVE_INFINITY): Minimum | null {
  const own = frustumShape(body);
  if (distance(own.centre, shape.centre) - own.reach - shape.reach >= below) return null;
  if (axisDistance(body, shape) - Math.max(body.startRadius, body.endRadius) >= below) return null;
  const found = minimumOnFrustum(shape.signedDistance, body);
  return found.value < below ? found : null;
}

/** A cheap first look: no place of the frustum is further from its axis than the larger radius. */
function axisDistance({ position, axis, length }: Frustum, shape: ConvexShape): number {
  return minimumOnInterval((h) => shape.signedDistance(...addScaled(position, axis, h)), 0, length).value;
}

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
  const own = frustumShape(body);
  let best: Minimum | null = null;
  tree.visit(
    own.centre,
    () => (best?.value ?? below) + own.reach,
    (a, b, c) => {
      const found = minimumOnTriangle(own.signedDistance, a, b, c);
      if (found.value < (best?.value ?? below)) best = found;
    },
  );
  return best;
}
