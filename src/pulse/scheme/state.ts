/** Room for the states that the scheme works on: made once, used every step. */
import { type CellState, CONSERVED, type FaceState, SIDE, STATE } from '../equations/gas';

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
