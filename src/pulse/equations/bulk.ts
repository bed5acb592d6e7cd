/** How much of a gas lies in a place at a pressure and a temperature. SI units. */
import type { Gas } from './gas';

/** kg/m³ and J/m³ (internal) at rest. */
export function bulkOf(
  gas: Gas,
  pressure: number,
  temperature: number,
  carried: Float64Array,
): [density: number, internal: number] {
  const perKelvin = gas.gasConstant(carried, 0, 1);
  const density = pressure / (perKelvin * temperature);
  return [density, density * (gas.enthalpy(temperature, carried, 0, 1) - perKelvin * temperature)];
}
