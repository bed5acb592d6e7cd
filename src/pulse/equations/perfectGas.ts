/** One perfect gas: γ and R are constants. The form that the textbook solutions have. */
import {
  type CellState,
  CONSERVED,
  type FaceState,
  GAMMA,
  type Gas,
  INTERNAL,
  PRESSURE,
  SIDE,
  SIDE_GAMMA,
  STATE,
  VELOCITY,
} from './gas';

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
  const { conserved, state, temperature } = cells;
  const lessOne = ratio - 1;
  const perConstant = 1 / gasConstant;
  for (let i = from; i < to; i++) {
    const c = CONSERVED * i;
    const rho = conserved[c]!;
    const per = 1 / rho;
    const momentum = conserved[c + 1]!;
    const u = momentum * per;
    const p = lessOne * (conserved[c + 2]! - 0.5 * momentum * u);
    // Written so that what is not a number fails too.
    if (!(rho > 0 && p > 0 && p < Infinity)) return i;
    const s = STATE * i;
    state[s] = rho;
    state[s + VELOCITY] = u;
    state[s + PRESSURE] = p;
    state[s + GAMMA] = ratio;
    temperature[i] = p * per * perConstant;
  }
  return -1;
}

function faces({ state }: FaceState, from: number, to: number, ratio: number): void {
  const perPressure = 1 / (ratio - 1);
  for (let s = SIDE * from; s < SIDE * to; s += SIDE) {
    state[s + INTERNAL] = state[s + PRESSURE]! * perPressure;
    state[s + SIDE_GAMMA] = ratio;
  }
}
