/** Room for the states that the scheme works on: made once, used every step. */
import type { CellState, FaceState } from '../equations/gas';
import type { Grid } from './grid';

/** What passes each face per m², positive from start to finish: kg/(m² s), Pa, W/m², and kg/(m² s) by carried component. */
export type Fluxes = {
  readonly mass: Float64Array;
  readonly momentum: Float64Array;
  readonly energy: Float64Array;
  readonly partial: Float64Array;
};

export function cellState(cells: number, carried: number): CellState {
  const column = () => new Float64Array(cells);
  return {
    density: column(),
    momentum: column(),
    energy: column(),
    partial: new Float64Array(cells * carried),
    velocity: column(),
    pressure: column(),
    temperature: column(),
    gamma: column(),
    fractions: new Float64Array(cells * carried),
    stride: cells,
  };
}

export function faceState(faces: number, carried: number): FaceState {
  const column = () => new Float64Array(faces);
  return {
    density: column(),
    velocity: column(),
    pressure: column(),
    fractions: new Float64Array(faces * carried),
    internal: column(),
    gamma: column(),
    temperature: column(),
    stride: faces,
  };
}

export function fluxes({ faces }: Grid, carried: number): Fluxes {
  const column = () => new Float64Array(faces);
  return { mass: column(), momentum: column(), energy: column(), partial: new Float64Array(faces * carried) };
}
