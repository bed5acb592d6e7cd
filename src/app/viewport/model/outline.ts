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

/** The hull of the points, `margin` off, its corners rounded by the same. */
export function hullOutline(points: readonly Point2[], margin: number): Point2[] {
  return hull(hull(points).flatMap((p) => circle(p, margin)));
}
