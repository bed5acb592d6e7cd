/**
 * States of a perfect gas without dimensions, p = ρT: what stands in a cell, [density, velocity, pressure], and what is conserved,
 * [mass, momentum, energy] a volume.
 */
import type { State } from '../../../pulse/riemann';
import { GAMMA } from '../../../pulse/rigs';

export type Conserved = readonly [mass: number, momentum: number, energy: number];
export type Three = readonly [number, number, number];

export const three = (of: (k: 0 | 1 | 2) => number): Three => [of(0), of(1), of(2)];
/** a + k b */
export const plus = (a: Three, b: Three, k = 1): Three => three((n) => a[n] + k * b[n]);

export const soundOf = ([rho, , p]: State): number => Math.sqrt((GAMMA * p) / rho);
export const energyOf = ([rho, u, p]: State): number => p / (GAMMA - 1) + 0.5 * rho * u * u;

export const conserved = (state: State): Conserved => [state[0], state[0] * state[1], energyOf(state)];
export const stateOf = ([rho, momentum, energy]: Conserved): State => [
  rho,
  momentum / rho,
  (GAMMA - 1) * (energy - (0.5 * momentum * momentum) / rho),
];

/** Written so that what is not a number is no gas either. */
export const isGas = ([rho, , p]: State): boolean => rho > 0 && p > 0;
