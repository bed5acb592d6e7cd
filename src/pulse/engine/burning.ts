/**
 * What a kilogram of fresh gas releases when it burns, and what fuel it carries. The gas counts as petrol vapour with just enough air
 * whatever the mixture is: how rich it really is only tells how much of the fuel the air can burn. SI units.
 */
import type { Gas } from '../equations/gas';
import type { BurnSetup, FuelSetup } from './types';

export type Burning = {
  /** kg of air, kg of fuel in a kg of fresh gas. */
  readonly air: number;
  readonly fuel: number;
  /** J that burning a kg releases, by the lower heating value. */
  readonly released: number;
  /** The same as it raises sensible energy counted from 0 K: what the two gases hold at 298.15 K is set against each other. */
  readonly raised: number;
};

/** Heating values are given at this temperature, K. */
const REFERENCE = 298.15;

/** @param gas fresh gas first, burnt gas second */
export function burningOf(gas: Gas, { heat, airPerFuel, lambda }: FuelSetup, { efficiency }: BurnSetup): Burning {
  const carried = lambda * airPerFuel;
  const air = carried / (1 + carried);
  const fuel = 1 / (1 + carried);
  const released = Math.min(fuel, air / airPerFuel) * heat * efficiency;
  const enthalpyOf = (burnt: number) => gas.enthalpy(REFERENCE, Float64Array.of(burnt), 0, 1);
  return { air, fuel, released, raised: released + enthalpyOf(1) - enthalpyOf(0) };
}
