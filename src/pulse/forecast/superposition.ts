/**
 * What runs which way in a pipe: pressure and velocity as two simple waves over each other (superposition of finite waves; R. S. Benson,
 * The Thermodynamics and Gas Dynamics of Internal-Combustion Engines, 1982, and G. P. Blair, Design and Simulation of Four-Stroke
 * Engines, 1999; from memory). With X = (p/p₀)^((γ−1)/2γ): X = X→ + X← − 1 and u = 2 c₀ (X→ − X←)/(γ−1), c₀ = c/X. SI units.
 */
import { burntGamma, burntSound } from './waveField';

/** Pressures that each wave alone would have over gas at rest at p₀. */
export type TwoWaves = { readonly onward: number; readonly back: number };

/** X→ and X←, which add where pressures do not; c₀, m/s; and Pa that a little more of either is worth there. */
export type WaveNumbers = {
  readonly onward: number;
  readonly back: number;
  readonly rest: number;
  readonly worth: number;
};

/** @param velocity positive from the pipe's start to its finish, and so is `onward` @param rest p₀, Pa */
export function waveNumbers(pressure: number, velocity: number, temperature: number, rest: number): WaveNumbers {
  const gamma = burntGamma(temperature);
  const power = (gamma - 1) / (2 * gamma);
  const whole = (pressure / rest) ** power;
  const still = burntSound(temperature) / whole;
  const difference = ((gamma - 1) * velocity) / (2 * still);
  return {
    onward: (whole + 1 + difference) / 2,
    back: (whole + 1 - difference) / 2,
    rest: still,
    worth: pressure / (power * whole),
  };
}

/** @param velocity as above @param rest p₀, Pa */
export function twoWaves(pressure: number, velocity: number, temperature: number, rest: number): TwoWaves {
  const { onward, back } = waveNumbers(pressure, velocity, temperature, rest);
  const gamma = burntGamma(temperature);
  const pressureOf = (x: number) => rest * Math.max(0, x) ** ((2 * gamma) / (gamma - 1));
  return { onward: pressureOf(onward), back: pressureOf(back) };
}
