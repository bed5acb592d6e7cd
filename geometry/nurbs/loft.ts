/**
 * A surface through sections: cubic along v, each section met exactly at its own v. verb's own loft puts every row of
 * control points at parameters of its own and keeps the last row's knots: it strays from the tests' sections by up to 0.004 mm,
 * and its lines of one v lie up to 0.035 mm out of plane, so that no area could be read along them. Here all rows share
 * parameters, evenly spaced; the rest is verb's: basis, solving, evaluation. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Verb } from './verb';

/** Control points [w·x, w·y, w·z, w]. */
export type Homogeneous = readonly [number, number, number, number];

/** Rational curves of one degree and one knot vector: what can be lofted. */
export type Sections = {
  readonly degree: number;
  readonly knots: readonly number[];
  /** In order along v, the first at v = 0 and the last at 1, evenly between; at least four. */
  readonly controlPoints: readonly (readonly Homogeneous[])[];
};

export type LoftedSurface = {
  /** The inner knots and both ends, along v: between two of them the surface is one polynomial. */
  readonly breaksV: readonly number[];
  point(u: number, v: number): Vec3;
  /** The point, and the derivative along u. */
  along(u: number, v: number): { readonly point: Vec3; readonly du: Vec3 };
};

const DEGREE_V = 3;

export function loft(verb: Verb, { degree, knots, controlPoints: sections }: Sections): LoftedSurface {
  const count = sections.length;
  if (count <= DEGREE_V) throw new RangeError(`A loft needs ${DEGREE_V + 1} sections, not ${count}`);
  const parameters = sections.map((_, k) => k / (count - 1));
  const knotsV = averagedKnots(parameters);
  const { Eval } = verb.eval;
  const rows = parameters.map((v) => {
    const row = new Array<number>(count).fill(0);
    const first = Eval.knotSpan(DEGREE_V, v, knotsV) - DEGREE_V;
    Eval.basisFunctions(v, DEGREE_V, knotsV).forEach((b, i) => {
      row[first + i] = b;
    });
    return row;
  });
  const across = sections[0]!.map((_, i) => {
    const solved = [0, 1, 2, 3].map((axis) =>
      verb.core.Mat.solve(
        rows.map((row) => [...row]),
        sections.map((section) => section[i]![axis]!),
      ),
    );
    return parameters.map((_, k) => solved.map((column) => column[k]!));
  });
  const surface = new verb.core.NurbsSurfaceData(degree, DEGREE_V, knots, knotsV, across);
  return {
    breaksV: [...new Set(knotsV)],
    point: (u, v) => Eval.rationalSurfacePoint(surface, u, v) as unknown as Vec3,
    along(u, v) {
      const [[point], [du]] = Eval.rationalSurfaceDerivatives(surface, u, v, 1) as unknown as [[Vec3], [Vec3]];
      return { point, du };
    },
  };
}

/** Inner knots as means of the parameters about them, so that the interpolation can be solved (Piegl and Tiller, The NURBS Book, 9.8). */
function averagedKnots(parameters: readonly number[]): number[] {
  const ends = DEGREE_V + 1;
  const inner = Array.from({ length: parameters.length - ends }, (_, i) => {
    const about = parameters.slice(i + 1, i + 1 + DEGREE_V);
    return about.reduce((sum, v) => sum + v, 0) / DEGREE_V;
  });
  return [...new Array<number>(ends).fill(0), ...inner, ...new Array<number>(ends).fill(1)];
}
