/**
 * One well-mixed lot of gas in a volume: mass, sensible internal energy, mass of each carried component, and the state that follows.
 * SI units. Nothing is allocated once it is made.
 */
import { bulkOf } from '../equations/bulk';
import type { Gas } from '../equations/gas';

const CLOSE = 1e-12;

export class Charge {
  mass = Number.NaN;
  energy = Number.NaN;
  readonly partial: Float64Array;
  readonly fractions: Float64Array;
  /** What `settle` finds. */
  pressure = Number.NaN;
  temperature = 300;

  constructor(private readonly gas: Gas) {
    this.partial = new Float64Array(gas.carried);
    this.fractions = new Float64Array(gas.carried);
  }

  fill(volume: number, pressure: number, temperature: number, fractions: Float64Array): void {
    const [density, internal] = bulkOf(this.gas, pressure, temperature, fractions);
    this.mass = density * volume;
    this.energy = internal * volume;
    for (let k = 0; k < fractions.length; k++) this.partial[k] = fractions[k]! * this.mass;
    this.temperature = temperature;
    this.settle(volume);
  }

  /** Fractions, temperature by Newton's method from the last one, pressure. False where it is no gas. */
  settle(volume: number): boolean {
    const { gas, fractions, partial, mass, energy } = this;
    if (!(mass > 0 && energy > 0 && energy < Infinity)) return false;
    for (let k = 0; k < fractions.length; k++) {
      const share = partial[k]! / mass;
      fractions[k] = share > 0 ? Math.min(share, 1) : 0;
    }
    const perKelvin = gas.gasConstant(fractions, 0, 1);
    const wanted = energy / mass;
    let temperature = this.temperature;
    for (let n = 0; n < 20; n++) {
      const held = gas.enthalpy(temperature, fractions, 0, 1) - perKelvin * temperature;
      const heat = perKelvin / (gas.gamma(temperature, fractions, 0, 1) - 1);
      const step = (wanted - held) / heat;
      const next = temperature + step;
      temperature = next > 0 ? next : 0.5 * temperature;
      if (!(Math.abs(step) > CLOSE * temperature)) break;
    }
    this.temperature = temperature;
    this.pressure = (mass * perKelvin * temperature) / volume;
    return true;
  }

  copy(from: Charge): void {
    this.mass = from.mass;
    this.energy = from.energy;
    this.partial.set(from.partial);
    this.fractions.set(from.fractions);
    this.pressure = from.pressure;
    this.temperature = from.temperature;
  }
}
