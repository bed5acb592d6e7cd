/**
 * What the pipes that feed a junction bring, mixed: mass, stagnation enthalpy, carried fractions, and what follows from these. SI
 * units; mass in kg/s. Fields begin as NaN so that they are kept as doubles.
 */
import { stagnationEnthalpy } from './flux';
import type { Planes } from './planes';
import type { Wave } from './wave';

export class Mixture {
  mass = Number.NaN;
  /** By the pressure of the junction. */
  massSlope = Number.NaN;
  /** J/kg and J/(kg Pa), once mixed. */
  enthalpy = Number.NaN;
  enthalpySlope = Number.NaN;
  temperature = Number.NaN;
  gamma = Number.NaN;
  gasConstant = Number.NaN;
  /** m/s, where the mixed stream runs at its own speed of sound; and K there. */
  sonic = Number.NaN;
  sonicTemperature = Number.NaN;
  readonly fractions: Float64Array;

  constructor(private readonly planes: Planes) {
    this.fractions = new Float64Array(planes.gas.carried);
  }

  empty(): void {
    this.mass = 0;
    this.massSlope = 0;
    this.enthalpy = 0;
    this.enthalpySlope = 0;
    this.fractions.fill(0);
  }

  /** Adds what the wave's last answer lets out of its pipe. */
  add(wave: Wave, area: number): void {
    const { planes, fractions } = this;
    const mass = area * wave.rho * wave.u;
    const slope = area * (wave.rhoSlope * wave.u + wave.rho * wave.slope);
    const enthalpy = stagnationEnthalpy(planes, wave);
    this.mass += mass;
    this.massSlope += slope;
    this.enthalpy += mass * enthalpy;
    if (wave.slope !== 0) {
      const power = wave.gamma / (wave.gamma - 1);
      const own = power * (1 / wave.rho - (wave.p * wave.rhoSlope) / (wave.rho * wave.rho)) + wave.u * wave.slope;
      this.enthalpySlope += slope * enthalpy + mass * own;
    }
    for (let k = 0, at = wave.plane; k < fractions.length; k++, at += planes.count)
      fractions[k]! += mass * planes.fractions[at]!;
  }

  /** All that comes is added. */
  mix(): void {
    const { planes, fractions, mass } = this;
    const { gas } = planes;
    for (let k = 0; k < fractions.length; k++) fractions[k]! /= mass;
    this.enthalpy /= mass;
    this.enthalpySlope = (this.enthalpySlope - this.massSlope * this.enthalpy) / mass;
    this.temperature = gas.temperatureOfEnthalpy(this.enthalpy, fractions, 0, 1);
    this.gamma = gas.gamma(this.temperature, fractions, 0, 1);
    this.gasConstant = gas.gasConstant(fractions, 0, 1);
    this.sonicTemperature = (2 * this.temperature) / (this.gamma + 1);
    this.sonic = Math.sqrt(this.gamma * this.gasConstant * this.sonicTemperature);
  }

  /** K, of a stream at this speed. */
  temperatureAt(speed: number): number {
    return this.planes.gas.temperatureOfEnthalpy(this.enthalpy - 0.5 * speed * speed, this.fractions, 0, 1);
  }
}
