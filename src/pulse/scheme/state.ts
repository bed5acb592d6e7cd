/** Room for the states that the scheme works on: made once, used every step. */
import { type CellState, CONSERVED, type FaceState, SIDE, STATE } from '../equations/gas';

/** Entries of a face: mass, momentum, energy. */
export const PASSED = 3;

/** What passes each face per m², positive from start to finish. */
export type Fluxes = {
  /** Three entries a face: kg/(m² s), Pa, W/m². */
  readonly passed: Float64Array;
  /** kg/(m² s) by carried component: entry k of face f at k × faces + f. */
  readonly partial: Float64Array;
};

export function cellState(cells: number, carried: number): CellState {
  return {
    conserved: new Float64Array(CONSERVED * cells),
    partial: new Float64Array(cells * carried),
    state: new Float64Array(STATE * cells),
    temperature: new Float64Array(cells),
    fractions: new Float64Array(cells * carried),
    stride: cells,
  };
}

export function faceState(faces: number, carried: number): FaceState {
  return {
    state: new Float64Array(2 * SIDE * faces),
    fractions: new Float64Array(2 * faces * carried),
    stride: 2 * faces,
  };
}

export const fluxes = (faces: number, carried: number): Fluxes => ({
  passed: new Float64Array(PASSED * faces),
  partial: new Float64Array(faces * carried),
});
