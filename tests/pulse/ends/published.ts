/**
 * The worked orifices of flow.json with the conditions that it tells in words, for the tests of all ends with a hole. SI units;
 * effective area 1e-4 m².
 */
import { flowValue } from '../../reference/flow';

const CONDITIONS = [
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 100000 },
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 90000 },
  { gamma: 1.4, gasConstant: 287.05, pressure: 101325, temperature: 293.15, behind: 50000 },
  { gamma: 1.33, gasConstant: 287, pressure: 4e5, temperature: 1200, behind: 1.1e5 },
] as const;

/** `mass`: kg/s. */
export const orifices = flowValue<{ mdot: number }[]>('gas.orifice_examples').map(({ mdot }, k) => ({
  ...CONDITIONS[k]!,
  mass: mdot,
}));

/** Where a nozzle chokes and what it then passes, ṁ √(R T0) / (A p0). */
export const choked = flowValue<{ g: number; p_crit: number; phi_choked: number }[]>('gas.choked');
