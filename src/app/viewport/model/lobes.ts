/**
 * The outline of several round tubes side by side, seen along their axis, as a distance from the centre at each angle.
 * Between the true union of circles (a clover leaf) and the string drawn tight round it, blended: what a formed
 * collector looks like where its tubes come in. Any one length unit, radians.
 */

export type Circle = { readonly x: number; readonly y: number; readonly radius: number };

/** How deep the folds between tubes go: 0 string drawn tight, 1 the bare circles. */
const FOLD = 0.62;

/** @param angles directions from the origin, which must lie inside the tight string */
export function lobedOutline(circles: readonly Circle[], angles: readonly number[]): number[] {
  const tight = tightOutline(circles, angles);
  return angles.map((angle, i) => {
    const bare = Math.max(0, ...circles.map((circle) => reach(circle, angle)));
    return tight[i]! + FOLD * (bare - tight[i]!);
  });
}

/** Farthest point of the circle along the ray at `angle`; 0 where the ray misses it. */
function reach({ x, y, radius }: Circle, angle: number): number {
  const along = x * Math.cos(angle) + y * Math.sin(angle);
  const across = x * Math.sin(angle) - y * Math.cos(angle);
  const half = radius * radius - across * across;
  return half < 0 ? 0 : Math.max(0, along + Math.sqrt(half));
}

/** The convex outline round all circles: nearest of its supporting lines along each ray. */
function tightOutline(circles: readonly Circle[], angles: readonly number[]): number[] {
  const support = angles.map((a) => Math.max(...circles.map((c) => c.x * Math.cos(a) + c.y * Math.sin(a) + c.radius)));
  return angles.map((angle) => {
    let nearest = Number.POSITIVE_INFINITY;
    angles.forEach((a, i) => {
      const facing = Math.cos(a - angle);
      if (facing > 0.02) nearest = Math.min(nearest, support[i]! / facing);
    });
    return nearest;
  });
}
