/**
 * The slow judge of crossing triangles: corners are whole numbers, all arithmetic is in exact fractions, every two
 * triangles are held against each other. They cross where they share a stretch whose middle lies strictly inside one of
 * them, or an area.
 */
import type { Mesh } from '../../../geometry';

/** top / bottom, the bottom more than 0. */
type Fraction = readonly [top: bigint, bottom: bigint];
type Point = readonly [bigint, bigint, bigint];
type Triangle = readonly [Point, Point, Point];

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Point, b: Point): bigint => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const fraction = (top: bigint, bottom: bigint): Fraction => (bottom < 0n ? [-top, -bottom] : [top, bottom]);
const isLess = (a: Fraction, b: Fraction): boolean => a[0] * b[1] < b[0] * a[1];
const normal = (t: Triangle): Point => cross(minus(t[1], t[0]), minus(t[2], t[0]));

/** p + s·(q − p), all over the bottom of s. */
type Place = { readonly top: Point; readonly bottom: bigint };
const along = (p: Point, q: Point, [s, bottom]: Fraction): Place => ({
  top: [0, 1, 2].map((k) => p[k]! * bottom + s * (q[k]! - p[k]!)) as unknown as Point,
  bottom,
});

/** Sign of how far inside the triangle's edge a place of its plane lies. */
function insides(t: Triangle, { top, bottom }: Place): bigint[] {
  const n = normal(t);
  return [0, 1, 2].map((k) => {
    const [p, q] = [t[k]!, t[(k + 1) % 3]!];
    const scaled: Point = [p[0] * bottom, p[1] * bottom, p[2] * bottom];
    return dot(cross(n, minus(q, p)), minus(top, scaled));
  });
}

const isInside = (t: Triangle, place: Place): boolean => insides(t, place).every((h) => h > 0n);

/** The places where the plane of `a` meets the edges of `b`; null where all of it lies in the plane. */
function section(a: Triangle, b: Triangle): Place[] | null {
  const n = normal(a);
  const heights = b.map((p) => dot(n, minus(p, a[0])));
  if (heights.every((h) => h === 0n)) return null;
  const places: Place[] = [];
  for (let k = 0; k < 3; k++) {
    const l = (k + 1) % 3;
    const [h, i] = [heights[k]!, heights[l]!];
    if (h === 0n) places.push({ top: b[k]!, bottom: 1n });
    else if (h < 0n ? i > 0n : i < 0n) places.push(along(b[k]!, b[l]!, fraction(h, h - i)));
  }
  return places;
}

/** Where the stretch from one place to another is inside all edges of `t`, as shares of it; null where nowhere. */
function clipped(t: Triangle, p: Place, q: Place): readonly [Fraction, Fraction] | null {
  let [low, high]: [Fraction, Fraction] = [
    [0n, 1n],
    [1n, 1n],
  ];
  const [from, to] = [insides(t, p), insides(t, q)];
  for (let k = 0; k < 3; k++) {
    const [f, g] = [from[k]! * q.bottom, to[k]! * p.bottom];
    if (f < 0n && g < 0n) return null;
    const s = f === g ? null : fraction(f, f - g);
    if (f < 0n && s && isLess(low, s)) low = s;
    if (g < 0n && s && isLess(s, high)) high = s;
  }
  return isLess(low, high) ? [low, high] : null;
}

function doCross(a: Triangle, b: Triangle): boolean {
  const places = section(a, b);
  if (places === null) return overlapInPlane(a, b);
  const [p, q] = places;
  if (!p || !q) return false;
  const part = clipped(a, p, q);
  if (!part) return false;
  const [[s, sb], [t, tb]] = part;
  const middle: Fraction = [s * tb + t * sb, 2n * sb * tb];
  // Over one bottom, so that the stretch is between whole places.
  const whole = (place: Place, other: Place): Point => place.top.map((x) => x * other.bottom) as unknown as Point;
  const at = along(whole(p, q), whole(q, p), middle);
  const place: Place = { top: at.top, bottom: at.bottom * p.bottom * q.bottom };
  return isInside(a, place) || isInside(b, place);
}

/** Of one plane: an area in common unless an edge of one has the other outside it. */
function overlapInPlane(a: Triangle, b: Triangle): boolean {
  const apart = (t: Triangle, other: Triangle): boolean =>
    [0, 1, 2].some((k) => other.every((p) => insides(t, { top: p, bottom: 1n })[k]! <= 0n));
  return !apart(a, b) && !apart(b, a);
}

/** Pairs of triangles, the lower first, in order; triangles without area are left out. */
export function crossingsByHand({ positions, triangles }: Mesh): [number, number][] {
  const all = Array.from({ length: triangles.length / 3 }, (_, t) =>
    [0, 1, 2].map((k) => [0, 1, 2].map((axis) => BigInt(positions[3 * triangles[3 * t + k]! + axis]!))),
  ) as unknown as Triangle[];
  const real = all.map((t) => normal(t).some((x) => x !== 0n));
  const pairs: [number, number][] = [];
  for (let i = 0; i < all.length; i++)
    for (let k = i + 1; k < all.length; k++) if (real[i] && real[k] && doCross(all[i]!, all[k]!)) pairs.push([i, k]);
  return pairs;
}
