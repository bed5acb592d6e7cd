/** Planes set by hand, an end over them, and what came of it. One plane for each pipe: its start. SI units, velocities out of the pipe. */
import { makeEnd } from '../../../src/pulse/ends/ends';
import { createPlanes, type End, type Planes } from '../../../src/pulse/ends/planes';
import type { Gas } from '../../../src/pulse/equations/gas';
import { perfectGas } from '../../../src/pulse/equations/perfectGas';
import type { RigEnd } from '../../../src/pulse/rig/types';

export const air = perfectGas(1.4, 287.05);
export const ambient = { pressure: 101325, temperature: 293.15 };

export type Inside = {
  readonly area: number;
  readonly pressure: number;
  readonly temperature: number;
  readonly velocity: number;
  /** Of the carried components. */
  readonly fractions?: readonly number[];
};

/** What an end has but for the pipe ends that it joins. */
type Without<E> = E extends RigEnd ? Omit<E, 'at'> : never;
export type EndOf = Without<RigEnd>;

export function planesOf(gas: Gas, insides: readonly Inside[]): Planes {
  const planes = createPlanes(insides.length, gas);
  insides.forEach((inside, pipe) => {
    setInside(planes, 2 * pipe, inside);
  });
  return planes;
}

export function setInside(planes: Planes, i: number, inside: Inside): void {
  const { gas, count } = planes;
  inside.fractions?.forEach((share, k) => {
    planes.fractions[k * count + i] = share;
  });
  planes.area[i] = inside.area;
  planes.pressure[i] = inside.pressure;
  planes.velocity[i] = inside.velocity;
  planes.density[i] = inside.pressure / (gas.gasConstant(planes.fractions, i, count) * inside.temperature);
  planes.gamma[i] = gas.gamma(inside.temperature, planes.fractions, i, count);
}

export function endOver(planes: Planes, input: EndOf, surroundings = ambient): End {
  const at = Array.from({ length: planes.count / 2 }, (_, pipe) => 2 * pipe);
  return makeEnd({ ...input, at: at as never } as RigEnd, at, planes, surroundings);
}

/** Planes after one passing of the end. */
export function passed(gas: Gas, insides: readonly Inside[], input: EndOf, surroundings = ambient): Planes {
  const planes = planesOf(gas, insides);
  endOver(planes, input, surroundings).pass(0, 1e-6);
  return planes;
}

/** Behind a shock of this Mach number that ran toward the plane into air at rest in ambient conditions. */
export function behindShock(area: number, mach: number): Inside {
  const gamma = 1.4;
  const sound = Math.sqrt(gamma * 287.05 * ambient.temperature);
  const pressure = 1 + ((2 * gamma) / (gamma + 1)) * (mach * mach - 1);
  const density = ((gamma + 1) * mach * mach) / ((gamma - 1) * mach * mach + 2);
  return {
    area,
    pressure: ambient.pressure * pressure,
    temperature: (ambient.temperature * pressure) / density,
    velocity: (2 / (gamma + 1)) * sound * (mach - 1 / mach),
  };
}

export const atRest = (area: number): Inside => ({ area, ...ambient, velocity: 0 });

/** Of the gas that is on the plane. */
export function machOnPlane(planes: Planes, i: number): number {
  const { gas, count, planePressure, planeDensity, planeVelocity, planeFractions } = planes;
  const square = planePressure[i]! / planeDensity[i]!;
  const temperature = square / gas.gasConstant(planeFractions, i, count);
  return Math.abs(planeVelocity[i]!) / Math.sqrt(gas.gamma(temperature, planeFractions, i, count) * square);
}
