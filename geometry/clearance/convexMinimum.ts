/**
 * The least value of a convex function over a segment, a disc or a triangle, by nested golden sections.
 * Partial minimisation of a convex function is convex, so the nesting is exact to the bracket's width. No derivatives:
 * distance fields have kinks at every edge, which is where the least gaps are found.
 */
import type { Vec3 } from '../../shared/vec3';
import { addScaled, anySquareTo, cross, sub } from '../vector';

export type Field = (x: number, y: number, z: number) => number;

/** Where a bracket is narrow enough, as a part of its first width: at 300 mm, 0.001 mm. */
const NARROW = 3e-6;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

export type Minimum = { readonly value: number; readonly at: Vec3 };

/**
 * Least value of convex `f` on [lo, hi]. The ends themselves are tried: a minimum there is returned exactly there.
 * @param part where the bracket is narrow enough, as a part of its first width
 */
export function minimumOnInterval(
  f: (t: number) => number,
  lo: number,
  hi: number,
  part = NARROW,
): { value: number; t: number } {
  let a = lo;
  let b = hi;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let fc = f(c);
  let fd = f(d);
  const narrow = part * (hi - lo);
  while (b - a > narrow) {
    if (fc <= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  let best = fc <= fd ? { value: fc, t: c } : { value: fd, t: d };
  for (const t of [lo, hi]) {
    const value = f(t);
    if (value <= best.value) best = { value, t };
  }
  return best;
}

export type Disc = { readonly centre: Vec3; readonly normal: Vec3; readonly radius: number };

/** Least value of convex `f` over a flat disc. */
export function minimumOnDisc(f: Field, disc: Disc): Minimum {
  const u = anySquareTo(disc.normal);
  const v = cross(disc.normal, u);
  const { radius } = disc;
  const across = (s: number): { value: number; t: number; row: Vec3 } => {
    const row = addScaled(disc.centre, u, s);
    const half = Math.sqrt(Math.max(0, radius * radius - s * s));
    const best = minimumOnInterval((t) => f(row[0] + t * v[0], row[1] + t * v[1], row[2] + t * v[2]), -half, half);
    return { ...best, row };
  };
  const { t: s } = minimumOnInterval((x) => across(x).value, -radius, radius);
  const { value, t, row } = across(s);
  return { value, at: addScaled(row, v, t) };
}

/** What a field that rises by no more than one a millimetre is at least over a triangle, from one look at its middle. */
export function leastAbout(f: Field, a: Vec3, b: Vec3, c: Vec3): number {
  const [x, y, z] = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
  const toA = (a[0] - x) ** 2 + (a[1] - y) ** 2 + (a[2] - z) ** 2;
  const toB = (b[0] - x) ** 2 + (b[1] - y) ** 2 + (b[2] - z) ** 2;
  const toC = (c[0] - x) ** 2 + (c[1] - y) ** 2 + (c[2] - z) ** 2;
  return f(x, y, z) - Math.sqrt(Math.max(toA, toB, toC));
}

/**
 * Least value of convex `f` over a triangle.
 * @param part as of `minimumOnInterval`, of its edges
 */
export function minimumOnTriangle(f: Field, a: Vec3, b: Vec3, c: Vec3, part = NARROW): Minimum {
  const ab = sub(b, a);
  const ac = sub(c, a);
  const along = (s: number): { value: number; t: number } =>
    minimumOnInterval(
      (t) => f(a[0] + s * ab[0] + t * ac[0], a[1] + s * ab[1] + t * ac[1], a[2] + s * ab[2] + t * ac[2]),
      0,
      1 - s,
      part,
    );
  const { t: s } = minimumOnInterval((x) => along(x).value, 0, 1, part);
  const { value, t } = along(s);
  return { value, at: addScaled(addScaled(a, ab, s), ac, t) };
}
