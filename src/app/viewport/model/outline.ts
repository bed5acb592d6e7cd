/** Convex outlines in a plane: the string drawn round points, kept a distance off. For drawing plates; any one unit. */

export type Point2 = readonly [x: number, y: number];

/** Corners of the convex hull, anticlockwise, collinear ones left out (Andrew's monotone chain). */
export function hull(points: readonly Point2[]): Point2[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point2[]) => {
    const chain: Point2[] = [];
    for (const p of list) {
      while (chain.length > 1 && turn(chain.at(-2)!, chain.at(-1)!, p) <= 0) chain.pop();
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: Point2, b: Point2, c: Point2) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

export function circle(centre: Point2, radius: number, count = 48): Point2[] {
  return Array.from({ length: count }, (_, i): Point2 => {
    const a = (2 * Math.PI * i) / count;
    return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)];
  });
}

/** Turn between the points that round a corner, radians. */
const ROUNDING = Math.PI / 24;

/**
 * The hull of the points, `margin` off, its corners rounded by the same. Walks the corners and turns at each from the one
 * side's normal to the other's, so that no two points fall together.
 */
export function hullOutline(points: readonly Point2[], margin: number): Point2[] {
  const corners = hull(points);
  const facing = (a: Point2, b: Point2) => Math.atan2(a[0] - b[0], b[1] - a[1]);
  return corners.flatMap((corner, i) => {
    const before = facing(corners[(i + corners.length - 1) % corners.length]!, corner);
    const after = facing(corner, corners[(i + 1) % corners.length]!);
    const turned = (after - before + 4 * Math.PI) % (2 * Math.PI);
    const steps = Math.max(1, Math.ceil(turned / ROUNDING));
    return Array.from({ length: steps + 1 }, (_, k): Point2 => {
      const a = before + (turned * k) / steps;
      return [corner[0] + margin * Math.cos(a), corner[1] + margin * Math.sin(a)];
    });
  });
}
