/** Heat to the walls of the exhaust ports in the head, by the law of `scheme/walls.ts`, as the gas stands now. SI units. */
import { GAMMA, PRESSURE, STATE, VELOCITY } from '../equations/gas';
import type { Joined } from './join';

/** W to the walls. */
export function portHeat({ network: { walls, grid }, stand, ports }: Joined): number {
  const { state, temperature } = stand.cells;
  let sum = 0;
  for (const { first, end } of ports)
    for (let i = first; i < end; i++) {
      const s = STATE * i;
      const rate = 2 * walls.factor[i]! * Math.abs(state[s + VELOCITY]!) * walls.perDiameter[i]!;
      const gamma = state[s + GAMMA]!;
      const above = state[s + PRESSURE]! * (1 - walls.wallTemperature[i]! / temperature[i]!);
      sum += (walls.heatShare[i]! * rate * gamma * above * grid.volume[i]!) / (gamma - 1);
    }
  return sum;
}
