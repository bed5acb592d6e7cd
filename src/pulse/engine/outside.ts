/** The air that an engine draws from. SI units. */
import { mixture } from '../equations/mixture';
import type { EngineSetup } from './types';

/** kg/m³ of dry air there: what volumetric efficiency is counted against. */
export function airOutside(air: EngineSetup['air']): { readonly air: EngineSetup['air']; readonly density: number } {
  const perKelvin = mixture(['air']).gasConstant(new Float64Array(0), 0, 1);
  return { air, density: air.pressure / (perKelvin * air.temperature) };
}
