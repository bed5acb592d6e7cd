/** A few cells and faces for tests of gases, made from density, velocity, temperature and fractions by the gas itself. */
import { type CellState, CONSERVED, type FaceState, type Gas, SIDE, STATE } from '../../../src/pulse/equations/gas';
import { cellState } from '../../../src/pulse/scheme/state';

export type Point = { density: number; velocity: number; temperature: number; fractions: readonly number[] };

export function cellsOf(gas: Gas, points: readonly Point[], guess: number): CellState {
  const cells = cellState(points.length, gas.carried);
  cells.temperature.fill(guess);
  points.forEach(({ density, velocity, temperature, fractions }, i) => {
    fractions.forEach((share, k) => {
      cells.partial[k * points.length + i] = density * share;
    });
    const energy = energyOf(gas, temperature, fractions);
    cells.conserved.set([density, density * velocity, density * (energy + 0.5 * velocity * velocity)], CONSERVED * i);
  });
  return cells;
}

/** Density, velocity, pressure, ratio of heats of one cell. */
export const stateAt = ({ state }: CellState, i: number): readonly [number, number, number, number] =>
  [...state.subarray(STATE * i, STATE * (i + 1))] as unknown as readonly [number, number, number, number];

/** J/kg, by enthalpy less RT. */
export function energyOf(gas: Gas, temperature: number, fractions: readonly number[]): number {
  const at = Float64Array.from(fractions);
  return gas.enthalpy(temperature, at, 0, 1) - gas.gasConstant(at, 0, 1) * temperature;
}

/** A place beside a face for each cell. */
export function facesOf(cells: CellState): FaceState {
  const n = cells.temperature.length;
  const state = new Float64Array(SIDE * n);
  for (let i = 0; i < n; i++) state.set(cells.state.subarray(STATE * i, STATE * i + 3), SIDE * i);
  return { state, fractions: cells.fractions, stride: n };
}
