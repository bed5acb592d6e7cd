/** Convex polygons of the plane, cut by straight lines (Sutherland and Hodgman's way). Any one unit. */
import type { Point2 } from '../plane/loop';

/** a + b·x + c·y, kept where it is not positive. */
export type Line2 = readonly [a: number, b: number, c: number];

export const valueAt = ([a, b, c]: Line2, [x, y]: Point2): number => a + b * x + c * y;

/** @param on how near to the line, measured in the line's own values, counts as on it */
export function clipped(polygon: readonly Point2[], line: Line2, on: number): Point2[] {
  const kept: Point2[] = [];
  const values = polygon.map((p) => {
    const value = valueAt(line, p);
    return Math.abs(value) < on ? 0 : value;
  });
  polygon.forEach((p, i) => {
    const j = (i + 1) % polygon.length;
    const [here, next] = [values[i]!, values[j]!];
    if (here <= 0) kept.push(p);
    if (here * next < 0) kept.push(crossing(p, polygon[j]!, here, next));
  });
  return kept;
}

/** Taken from the same end whichever way the edge is run, so that two polygons that share it share the point too. */
function crossing(p: Point2, q: Point2, atP: number, atQ: number): Point2 {
  const swap = p[0] > q[0] || (p[0] === q[0] && p[1] > q[1]);
  const [a, b, va, vb] = swap ? [q, p, atQ, atP] : [p, q, atP, atQ];
  const t = va / (va - vb);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}
