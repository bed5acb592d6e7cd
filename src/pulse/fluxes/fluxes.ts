/** What passes faces: the form that every flux law writes. SI units. */

/** Entries of a face: mass, momentum, energy. */
export const PASSED = 3;

/** What passes each face per m², positive from start to finish. */
export type Fluxes = {
  /** Three entries a face: kg/(m² s), Pa, W/m². */
  readonly passed: Float64Array;
  /** kg/(m² s) by carried component: entry k of face f at k × faces + f. */
  readonly partial: Float64Array;
};

export const fluxes = (faces: number, carried: number): Fluxes => ({
  passed: new Float64Array(PASSED * faces),
  partial: new Float64Array(faces * carried),
});
