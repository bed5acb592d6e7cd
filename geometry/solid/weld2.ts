/** Points of a plane, each kept once: a point within the tolerance of one known is that one. Any one unit. */
import type { Point2 } from '../plane/loop';

export type Welded = {
  readonly points: Point2[];
  /** The index of the point, new or known. */
  at(point: Point2): number;
};

export function weldedPoints(tolerance: number): Welded {
  const points: Point2[] = [];
  const cells = new Map<string, number[]>();
  const cellOf = (x: number) => Math.floor(x / tolerance);
  return {
    points,
    at(point) {
      const [i, j] = [cellOf(point[0]), cellOf(point[1])];
      // A near one may lie in any of the cells around: rounding alone would part two points astride a border.
      for (let u = i - 1; u <= i + 1; u++)
        for (let v = j - 1; v <= j + 1; v++)
          for (const k of cells.get(`${u} ${v}`) ?? [])
            if (Math.hypot(points[k]![0] - point[0], points[k]![1] - point[1]) < tolerance) return k;
      const key = `${i} ${j}`;
      cells.set(key, [...(cells.get(key) ?? []), points.push(point) - 1]);
      return points.length - 1;
    },
  };
}
