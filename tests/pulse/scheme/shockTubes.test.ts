/**
 * Accuracy: four shock tubes with exact solutions at 200 cells. Data: E. F. Toro, Riemann Solvers and Numerical Methods for Fluid
 * Dynamics, 3rd ed., Springer 2009, section 6.4. Bounds on the mean error of density over its largest value: none may be loosened.
 */
import { expect, test } from 'vitest';
import type { InitialState } from '../../../src/pulse/rig/types';
import { type State, sampleAt, starOf } from '../riemann';
import { bothEnds, pipe, ran, rig } from '../rigs';

const GAMMA = 1.4;

type Tube = readonly [name: string, left: State, right: State, diaphragm: number, time: number, most: number];

const TUBES: readonly Tube[] = [
  ['modified Sod', [1, 0.75, 1], [0.125, 0, 0.1], 0.3, 0.2, 0.0035],
  ['two rarefactions', [1, -2, 0.4], [1, 2, 0.4], 0.5, 0.15, 0.004],
  ['strong blast', [1, 0, 1000], [1, 0, 0.01], 0.5, 0.012, 0.015],
  ['colliding streams', [5.99924, 19.5975, 460.894], [5.99242, -6.19633, 46.095], 0.4, 0.035, 0.009],
];

const side = ([density, velocity, pressure]: State, from: number, to: number): InitialState => ({
  from,
  to,
  pressure,
  temperature: pressure / density,
  velocity,
});

/** Mean |ρ − exact| over the largest exact ρ, by cell centres. */
function densityError([, left, right, diaphragm, time]: Tube, cells: number, courant: number): number {
  const { profile } = ran(
    rig({
      gas: { gamma: GAMMA, gasConstant: 1 },
      ambient: { pressure: 1, temperature: 1 },
      pipes: [pipe('tube', { cells, initial: [side(left, 0, diaphragm), side(right, diaphragm, 1)] })],
      ends: bothEnds('tube', 'through'),
      duration: time,
      courant,
    }),
  );
  const { x, density } = profile[0]!;
  const star = starOf(left, right, GAMMA);
  const exact = Array.from(x, (at) => sampleAt(left, right, star, GAMMA, (at - diaphragm) / time)[0]);
  const sum = exact.reduce((total, rho, i) => total + Math.abs(rho - density[i]!), 0);
  return sum / cells / Math.max(...exact);
}

test.each(TUBES)('%s', (...tube) => {
  expect(densityError(tube, 200, 0.8)).toBeLessThanOrEqual(tube[5]);
});

test.each(TUBES)('%s, at half the step', (...tube) => {
  expect(densityError(tube, 200, 0.4)).toBeLessThanOrEqual(tube[5] * 1.1);
});

test.each(TUBES)('%s: twice the cells, less error', (...tube) => {
  expect(densityError(tube, 400, 0.8)).toBeLessThan(0.75 * densityError(tube, 200, 0.8));
});
