/** What passes between two states that meet: HLLC with three choices of its outer speeds, the exact solution, and Rusanov's. */
import { type State, sampleAt, starOf } from '../../../pulse/riemann';
import { GAMMA } from '../../../pulse/rigs';
import { type Conserved, conserved, energyOf, soundOf, three } from './states';

export type Flux = (left: State, right: State) => Conserved;

const ownFlux = (state: State): Conserved => {
  const [rho, u, p] = state;
  return [rho * u, rho * u * u + p, u * (energyOf(state) + p)];
};

/** The leftmost and the rightmost wave. */
type OuterSpeeds = (left: State, right: State) => readonly [number, number];

/** The wilder of a side's own sound and that of a mean, to the left and to the right. */
const wilder = (left: State, right: State, mean: number, sound: number): [number, number] => [
  Math.min(left[1] - soundOf(left), mean - sound),
  Math.max(right[1] + soundOf(right), mean + sound),
];

/** A mean by roots of density, of velocity and stagnation enthalpy (Roe), as Einfeldt has it. */
export const byRoots: OuterSpeeds = (left, right) => {
  const [wl, wr] = [Math.sqrt(left[0]), Math.sqrt(right[0])];
  const mean = (a: number, b: number) => (wl * a + wr * b) / (wl + wr);
  const enthalpy = (side: State) => (energyOf(side) + side[2]) / side[0];
  const u = mean(left[1], right[1]);
  const a2 = (GAMMA - 1) * (mean(enthalpy(left), enthalpy(right)) - 0.5 * u * u);
  return wilder(left, right, u, Math.sqrt(a2));
};

/** The solver's own: both sides weigh alike. */
export const alike: OuterSpeeds = (left, right) => {
  const du = right[1] - left[1];
  const a2 = 0.5 * (soundOf(left) ** 2 + soundOf(right) ** 2) + 0.125 * du * du;
  return wilder(left, right, 0.5 * (left[1] + right[1]), Math.sqrt(a2));
};

export const fastestOwn: OuterSpeeds = (left, right) => [
  Math.min(left[1] - soundOf(left), right[1] - soundOf(right)),
  Math.max(left[1] + soundOf(left), right[1] + soundOf(right)),
];

/** Toro 2009, section 10.4. */
export const hllc =
  (outer: OuterSpeeds): Flux =>
  (left, right) => {
    const [sl, sr] = outer(left, right);
    if (sl >= 0) return ownFlux(left);
    if (sr <= 0) return ownFlux(right);
    const ml = left[0] * (sl - left[1]);
    const mr = right[0] * (sr - right[1]);
    const contact = (right[2] - left[2] + ml * left[1] - mr * right[1]) / (ml - mr);
    const [side, speed, m] = contact >= 0 ? [left, sl, ml] : [right, sr, mr];
    const rho = m / (speed - contact);
    const p = side[2] + m * (contact - side[1]);
    const energy = ((speed - side[1]) * energyOf(side) - side[2] * side[1] + p * contact) / (speed - contact);
    return [rho * contact, rho * contact * contact + p, contact * (energy + p)];
  };

export const exact: Flux = (left, right) => ownFlux(sampleAt(left, right, starOf(left, right, GAMMA), GAMMA, 0));

export const rusanov: Flux = (left, right) => {
  const [fl, fr, ul, ur] = [ownFlux(left), ownFlux(right), conserved(left), conserved(right)];
  const fastest = Math.max(Math.abs(left[1]) + soundOf(left), Math.abs(right[1]) + soundOf(right));
  return three((k) => 0.5 * (fl[k] + fr[k]) - 0.5 * fastest * (ur[k] - ul[k]));
};
