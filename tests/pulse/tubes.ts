/**
 * Four shock tubes with exact solutions: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed., Springer
 * 2009, section 6.4. `most` bounds the mean error of density at 200 cells over its largest value: none may be loosened.
 */
import { type State, sampleAt, starOf } from './riemann';
import { GAMMA } from './rigs';

export type Tube = {
  readonly name: string;
  readonly left: State;
  readonly right: State;
  readonly diaphragm: number;
  readonly time: number;
  readonly most: number;
};

export const TUBES: readonly Tube[] = [
  { name: 'modified Sod', left: [1, 0.75, 1], right: [0.125, 0, 0.1], diaphragm: 0.3, time: 0.2, most: 0.0035 },
  { name: 'two rarefactions', left: [1, -2, 0.4], right: [1, 2, 0.4], diaphragm: 0.5, time: 0.15, most: 0.004 },
  { name: 'strong blast', left: [1, 0, 1000], right: [1, 0, 0.01], diaphragm: 0.5, time: 0.012, most: 0.015 },
  {
    name: 'colliding streams',
    left: [5.99924, 19.5975, 460.894],
    right: [5.99242, -6.19633, 46.095],
    diaphragm: 0.4,
    time: 0.035,
    most: 0.009,
  },
];

/** Mean |ρ − exact| over the largest exact ρ, by the centres of even cells. */
export function densityOff({ left, right, diaphragm, time }: Tube, density: ArrayLike<number>): number {
  const cells = density.length;
  const star = starOf(left, right, GAMMA);
  const exact = Array.from(
    density,
    (_, i) => sampleAt(left, right, star, GAMMA, ((i + 0.5) / cells - diaphragm) / time)[0],
  );
  const sum = exact.reduce((total, rho, i) => total + Math.abs(rho - density[i]!), 0);
  return sum / cells / Math.max(...exact);
}
