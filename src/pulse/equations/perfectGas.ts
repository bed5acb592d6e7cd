/** One perfect gas: γ and R are constants. The form that the textbook solutions have. */
import type { CellState, FaceState, Gas } from './gas';

export function perfectGas(gamma: number, gasConstant: number): Gas {
  const lessOne = gamma - 1;
  const cp = (gamma * gasConstant) / lessOne;
  return {
    components: ['gas'],
    carried: 0,
    decode: (cells, from, to) => decode(cells, from, to, gamma, gasConstant),
    faces: (sides, from, to) => faces(sides, from, to, gamma),
    gasConstant: () => gasConstant,
    gamma: () => gamma,
    enthalpy: (temperature) => cp * temperature,
    temperatureOfEnthalpy: (enthalpy) => enthalpy / cp,
  };
}

function decode(cells: CellState, from: number, to: number, ratio: number, gasConstant: number): number {
  const { density, momentum, energy, velocity, pressure, temperature, gamma } = cells;
  const lessOne = ratio - 1;
  for (let i = from; i < to; i++) {
    const rho = density[i]!;
    const u = momentum[i]! / rho;
    const p = lessOne * (energy[i]! - 0.5 * rho * u * u);
    // Written so that what is not a number fails too.
    if (!(rho > 0 && p > 0 && p < Infinity)) return i;
    velocity[i] = u;
    pressure[i] = p;
    temperature[i] = p / (rho * gasConstant);
    gamma[i] = ratio;
  }
  return -1;
}

function faces(sides: FaceState, from: number, to: number, ratio: number): void {
  const { pressure, internal, gamma } = sides;
  const perPressure = 1 / (ratio - 1);
  for (let i = from; i < to; i++) {
    internal[i] = pressure[i]! * perPressure;
    gamma[i] = ratio;
  }
}
