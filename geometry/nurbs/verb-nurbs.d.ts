/** Of verb-nurbs 3.0.3, which brings no types: the few functions used. Homogeneous points are [w·x, w·y, w·z, w]. */
declare module 'verb-nurbs/build/js/verb.es.js' {
  type Surface = {
    readonly degreeU: number;
    readonly degreeV: number;
    readonly knotsU: readonly number[];
    readonly knotsV: readonly number[];
    /** One row for each control point along u, running along v. */
    readonly controlPoints: readonly (readonly (readonly number[])[])[];
  };
  type Curve = {
    readonly degree: number;
    readonly knots: readonly number[];
    readonly controlPoints: readonly (readonly number[])[];
  };
  const verb: {
    readonly core: {
      readonly NurbsSurfaceData: new (
        degreeU: number,
        degreeV: number,
        knotsU: readonly number[],
        knotsV: readonly number[],
        controlPoints: readonly (readonly (readonly number[])[])[],
      ) => Surface;
      readonly NurbsCurveData: new (
        degree: number,
        knots: readonly number[],
        controlPoints: readonly (readonly number[])[],
      ) => Curve;
      readonly Mat: { solve(a: number[][], b: number[]): number[] };
    };
    readonly eval: {
      readonly Eval: {
        knotSpan(degree: number, u: number, knots: readonly number[]): number;
        basisFunctions(u: number, degree: number, knots: readonly number[]): number[];
        rationalSurfacePoint(surface: Surface, u: number, v: number): number[];
        /** Entry [k][l]: k times along u, l times along v. */
        rationalSurfaceDerivatives(surface: Surface, u: number, v: number, times: number): number[][][];
      };
      readonly Make: { loftedSurface(curves: Curve[], degreeV: number): Surface };
    };
  };
  export default verb;
}
