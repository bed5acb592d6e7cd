/**
 * A section as one closed rational curve of degree 2: eight spans, side and corner by turns, counter-clockwise from the
 * foot of the right side; span k runs from u = k to k + 1. Exact: a straight is a straight and a corner an arc. Every
 * section has the same knots and weights, so that any between two of them, in homogeneous coordinates, is one as well. mm.
 */
import type { Homogeneous } from '../nurbs/loft';
import type { Section } from './section';

export const SPANS = 8;
export const SECTION_DEGREE = 2;

/** A double knot where spans meet. */
export const SECTION_KNOTS: readonly number[] = [
  0,
  ...Array.from({ length: SPANS + 1 }, (_, k) => [k, k]).flat(),
  SPANS,
];

/** Of a quarter arc's middle control point: the cosine of half its angle (Piegl and Tiller, The NURBS Book, 7.3). */
const QUARTER_WEIGHT = Math.SQRT1_2;

const QUARTERS = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

export function sectionCurve({ width, height, corner }: Section, z: number): Homogeneous[] {
  const points: Homogeneous[] = [];
  const add = (x: number, y: number, w: number) => points.push([w * x, w * y, w * z, w]);
  for (const [c, s] of QUARTERS) {
    // This side looks along (c, s); it is `reach` from the axis and reaches `half` to either hand, corners left out.
    const [reach, other] = s === 0 ? [width / 2, height / 2] : [height / 2, width / 2];
    const half = other - corner;
    const at = (out: number, left: number): [number, number] => [out * c - left * s, out * s + left * c];
    add(...at(reach, -half), 1);
    add(...at(reach, 0), 1);
    add(...at(reach, half), 1);
    add(...at(reach, other), QUARTER_WEIGHT);
  }
  points.push(points[0]!);
  return points;
}

/** Where on a quarter arc, 0 to 1 by angle, in the span's own parameter: a rational arc does not run evenly. */
export function arcParameter(share: number): number {
  const done = Math.sin((share * Math.PI) / 4);
  const left = Math.sin(((1 - share) * Math.PI) / 4);
  return done / (done + left);
}
