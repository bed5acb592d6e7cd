/**
 * A flat region with holes as triangles: every edge point a corner of some triangle, none on another's side, and no triangle
 * flatter than it must be (Delaunay, but for the edges given), so that none loses its area when a file rounds it. mm.
 */
import earcut from 'earcut';
import type { Point2 } from '../plane/loop';

/** @param rings the outer one counter-clockwise, then its holes clockwise: indices into `points` */
export function planeRegion(
  points: readonly Point2[],
  rings: readonly (readonly number[])[],
): [number, number, number][] {
  const order = rings.flat();
  const starts = rings.slice(1).map((_, k) => rings.slice(0, k + 1).reduce((sum, ring) => sum + ring.length, 0));
  const flat = earcut(
    order.flatMap((i) => points[i]!),
    starts,
  );
  const mesh = new Flippable(points);
  for (let k = 0; k < flat.length; k += 3) {
    const [a, b, c] = [order[flat[k]!]!, order[flat[k + 1]!]!, order[flat[k + 2]!]!];
    mesh.add(...(area(points, a, b, c) > 0 ? ([a, b, c] as const) : ([a, c, b] as const)));
  }
  for (const ring of rings) mesh.insist(ring);
  mesh.flip();
  return mesh.triangles();
}

/** Twice, signed. */
const area = (points: readonly Point2[], a: number, b: number, c: number): number => {
  const [p, q, r] = [points[a]!, points[b]!, points[c]!];
  return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
};

/** Triangles by their directed edges: each names the corner opposite, to the left. */
class Flippable {
  private readonly opposite = new Map<number, number>();
  private readonly fixed = new Set<number>();

  constructor(private readonly points: readonly Point2[]) {}

  private key(a: number, b: number): number {
    return a * this.points.length + b;
  }

  private of(a: number, b: number): number | undefined {
    return this.opposite.get(this.key(a, b));
  }

  add(a: number, b: number, c: number): void {
    this.opposite.set(this.key(a, b), c);
    this.opposite.set(this.key(b, c), a);
    this.opposite.set(this.key(c, a), b);
  }

  private remove(a: number, b: number, c: number): void {
    this.opposite.delete(this.key(a, b));
    this.opposite.delete(this.key(b, c));
    this.opposite.delete(this.key(c, a));
  }

  /** Points that the triangulation left out because they lie on a straight are put back: the side that passes them is split. */
  insist(ring: readonly number[]): void {
    const n = ring.length;
    const lies = (k: number) => this.of(ring[k % n]!, ring[(k + 1) % n]!) !== undefined;
    for (let k = 0; k < n; k++) {
      if (!lies(k)) {
        let end = k + 2;
        while (end < k + n && this.of(ring[k]!, ring[end % n]!) === undefined) end++;
        const [a, b] = [ring[k]!, ring[end % n]!];
        const c = this.of(a, b);
        if (c === undefined)
          throw new Error('A flat region could not be triangulated: an edge of it is in no triangle');
        this.remove(a, b, c);
        for (let i = k; i < end; i++) this.add(ring[i % n]!, ring[(i + 1) % n]!, c);
      }
      this.fixed.add(this.key(ring[k]!, ring[(k + 1) % n]!));
    }
  }

  /** Lawson's flips: an edge between two triangles is turned where the other diagonal keeps each out of the other's circle. */
  flip(): void {
    const waiting = [...this.opposite.keys()];
    const n = this.points.length;
    for (let turns = 0; waiting.length > 0 && turns < MOST_TURNS * this.opposite.size; turns++) {
      const key = waiting.pop()!;
      const [a, b] = [Math.floor(key / n), key % n];
      const [c, d] = [this.of(a, b), this.of(b, a)];
      if (c === undefined || d === undefined || this.fixed.has(key) || this.fixed.has(this.key(b, a))) continue;
      if (!this.inCircle(a, b, c, d)) continue;
      if (area(this.points, a, d, c) <= 0 || area(this.points, d, b, c) <= 0) continue;
      this.remove(a, b, c);
      this.remove(b, a, d);
      this.add(a, d, c);
      this.add(d, b, c);
      waiting.push(this.key(a, d), this.key(d, b), this.key(b, c), this.key(c, a));
    }
  }

  /** Whether d lies inside the circle through a, b, c, by more than rounding. */
  private inCircle(a: number, b: number, c: number, d: number): boolean {
    const [dx, dy] = this.points[d]!;
    const [p, q, r] = [a, b, c].map((i) => [this.points[i]![0] - dx, this.points[i]![1] - dy] as const);
    const lift = ([x, y]: readonly [number, number]) => x * x + y * y;
    const [pp, qq, rr] = [lift(p!), lift(q!), lift(r!)];
    const determinant =
      p![0] * (q![1] * rr - r![1] * qq) - p![1] * (q![0] * rr - r![0] * qq) + pp * (q![0] * r![1] - r![0] * q![1]);
    return determinant > ROUNDING * (pp + qq + rr) ** 2;
  }

  triangles(): [number, number, number][] {
    const n = this.points.length;
    return [...this.opposite].flatMap(([key, c]): [number, number, number][] => {
      const [a, b] = [Math.floor(key / n), key % n];
      return a < b && a < c ? [[a, b, c]] : [];
    });
  }
}

const ROUNDING = 1e-12;
/** Flips end by themselves; this only bounds what rounding might do. */
const MOST_TURNS = 20;
