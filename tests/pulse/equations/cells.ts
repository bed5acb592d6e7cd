/** A few cells and faces for tests of gases, made from density, velocity, temperature and fractions by the gas itself. */
import type { CellState, FaceState, Gas } from '../../../src/pulse/equations/gas';

export type Point = { density: number; velocity: number; temperature: number; fractions: readonly number[] };

export function cellsOf(gas: Gas, points: readonly Point[], guess: number): CellState & { temperature: Float64Array } {
  const n = points.length;
  const column = () => new Float64Array(n);
  const carried = () => new Float64Array(n * gas.carried);
  const cells = {
    density: column(),
    momentum: column(),
    energy: column(),
    partial: carried(),
    velocity: column(),
    pressure: column(),
    temperature: column().fill(guess),
    gamma: column(),
    fractions: carried(),
    stride: n,
  };
  points.forEach(({ density, velocity, temperature, fractions }, i) => {
    fractions.forEach((share, k) => {
      cells.partial[k * n + i] = density * share;
    });
    const energy = energyOf(gas, temperature, fractions);
    cells.density[i] = density;
    cells.momentum[i] = density * velocity;
    cells.energy[i] = density * (energy + 0.5 * velocity * velocity);
  });
  return cells;
}

/** J/kg, by enthalpy less RT. */
export function energyOf(gas: Gas, temperature: number, fractions: readonly number[]): number {
  const at = Float64Array.from(fractions);
  return gas.enthalpy(temperature, at, 0, 1) - gas.gasConstant(at, 0, 1) * temperature;
}

export function facesOf(cells: CellState): FaceState {
  const n = cells.density.length;
  return {
    density: cells.density,
    velocity: cells.velocity,
    pressure: cells.pressure,
    fractions: cells.fractions,
    internal: new Float64Array(n),
    gamma: new Float64Array(n),
    temperature: new Float64Array(n),
    stride: n,
  };
}
