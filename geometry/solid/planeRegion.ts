/**
 * A flat region with holes as triangles: every edge point a corner of some triangle, none on another's side, and no triangle
 * flatter than it must be (Delaunay, but for the edges given), so that none loses its area when a file rounds it. mm.
 * Points in line are what ear clipping drops, and what makes flat triangles; so it is told of points a hair beside the true ones.
 */
import earcut from 'earcut';
import type { Point2 } from '../plane/loop';
import { LEAST_MESH_STEP } from '../tolerance';

/** @param rings the outer one counter-clockwise, then its holes clockwise: indices into `points` */
export function planeRegion(
  points: readonly Point2[],
  rings: readonly (readonly number[])[],
): [number, number, number][] {
  const order = rings.flat();
  const starts = rings.slice(1).map((_, k) => rings.slice(0, k + 1).reduce((sum, ring) => sum + ring.length, 0));
  const beside = points.map(([x, y], i): Point2 => [x + HAIR * hair(2 * i), y + HAIR * hair(2 * i + 1)]);
  const flat = earcut(
    order.flatMap((i) => beside[i]!),
    starts,
  );
  const mesh = new Flippable(beside);
  for (let k = 0; k < flat.length; k += 3) {
    const [a, b, c] = [order[flat[k]!]!, order[flat[k + 1]!]!, order[flat[k + 2]!]!];
    mesh.add(...(area(beside, a, b, c) > 0 ? ([a, b, c] as const) : ([a, c, b] as const)));
  }
  for (const ring of rings) mesh.fix(ring);
  mesh.flip();
  return mesh.triangles();
}

/** Far less than a chord strays from its arc, far more than rounding. */
const HAIR = LEAST_MESH_STEP / 10;

/** Always the same for the same place in the list, and like chance from one to the next. */
const hair = (k: number): number => (Math.imul(k + 1, 2654435761) >>> 0) / 2 ** 32 - 0.5;

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

  /** These edges are not to be turned. */
  fix(ring: readonly number[]): void {
    for (const [k, a] of ring.entries()) this.fixed.add(this.key(a, ring[(k + 1) % ring.length]!));
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
