/** Sets a network's first state, and its planes to what lies beside them, so that the first slopes are flat there. */

import { type CellState, CONSERVED, PRESSURE, STATE, VELOCITY } from '../equations/gas';
import type { Grid, PipeGrid } from './grid';
import type { Network, Stand } from './step';

/** Brings a network to its first instant: `cells` has its conserved quantities. Answers the cell that is no state of a gas, or −1. */
export function settleFirst({ gas, grid, planes, walls }: Network, stand: Stand): number {
  const { cells } = stand;
  cells.temperature.fill(300);
  const wrong = gas.decode(cells, 0, grid.cells);
  if (wrong >= 0) return wrong;
  for (const [k, pipe] of grid.pipes.entries()) {
    beside(stand, planes, 2 * k, pipe.first, -1);
    beside(stand, planes, 2 * k + 1, pipe.end - 1, 1);
    walls.laws[k]?.(pipe, cells, walls.factor);
  }
  return -1;
}

function beside({ cells }: Stand, planes: Network['planes'], plane: number, cell: number, sign: number): void {
  const s = STATE * cell;
  planes.lastDensity[plane] = cells.state[s]!;
  planes.lastVelocity[plane] = sign * cells.state[s + VELOCITY]!;
  planes.lastPressure[plane] = cells.state[s + PRESSURE]!;
  for (let k = 0; k < planes.gas.carried; k++)
    planes.lastFractions[k * planes.count + plane] = cells.fractions[k * cells.stride + cell]!;
}

/** kg (`entry` 0) or J (`entry` 2) in all pipes. */
export function contentOf({ volume }: Grid, { conserved }: CellState, entry: number): number {
  let sum = 0;
  for (let i = 0; i < volume.length; i++) sum += volume[i]! * conserved[CONSERVED * i + entry]!;
  return sum;
}

export const pipeOfCell = (pipes: readonly PipeGrid[], cell: number): number =>
  pipes.findIndex(({ first, end }) => cell >= first && cell < end);
