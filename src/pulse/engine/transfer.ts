/**
 * Goes on with other cells: the gas of each pipe is shared out by the lengths that old and new cells have in common, and cylinders and
 * plenum stand as they stood. Some cycles on coarse cells so bring a speed near its end for a ninth of what fine ones take.
 */
import { CONSERVED } from '../equations/gas';
import { ENGINE_REMEDY, FlowStopped, FOUND } from '../report';
import { pipeOfCell, settleFirst } from '../scheme/firstState';
import { centreOf, type PipeGrid } from '../scheme/grid';
import type { Joined } from './join';

/** @throws FlowStopped where what came out is no gas */
export function transfer(from: Joined, to: Joined): void {
  for (let k = 0; k < to.ids.length; k++) sharePipe(from, from.network.grid.pipes[k]!, to, to.network.grid.pipes[k]!);
  for (const [k, cylinder] of to.cylinders.entries()) cylinder.follow(from.cylinders[k]!);
  if (to.plenum && from.plenum) to.plenum.follow(from.plenum);
  const { pipes } = to.network.grid;
  const wrong = settleFirst(to.network, to.stand);
  if (wrong < 0) return;
  const k = pipeOfCell(pipes, wrong);
  const pipe = pipes[k]!;
  throw new FlowStopped(0, to.ids[k]!, wrong - pipe.first, centreOf(pipe, wrong), FOUND.state, ENGINE_REMEDY);
}

function sharePipe(from: Joined, old: PipeGrid, to: Joined, pipe: PipeGrid): void {
  const [source, target] = [from.stand.cells, to.stand.cells];
  const carried = to.network.gas.carried;
  const most = old.end - old.first;
  for (let i = pipe.first; i < pipe.end; i++) {
    const a = (i - pipe.first) * pipe.spacing;
    const b = a + pipe.spacing;
    const sums = [0, 0, 0];
    const partial = new Float64Array(carried);
    let weight = 0;
    const last = Math.min(most - 1, Math.floor(b / old.spacing));
    for (let j = Math.min(most - 1, Math.floor(a / old.spacing)); j <= last; j++) {
      const common = Math.min(b, (j + 1) * old.spacing) - Math.max(a, j * old.spacing);
      if (!(common > 0)) continue;
      weight += common;
      const at = old.first + j;
      for (let c = 0; c < CONSERVED; c++) sums[c]! += common * source.conserved[CONSERVED * at + c]!;
      for (let c = 0; c < carried; c++) partial[c]! += common * source.partial[c * source.stride + at]!;
    }
    for (let c = 0; c < CONSERVED; c++) target.conserved[CONSERVED * i + c] = sums[c]! / weight;
    for (let c = 0; c < carried; c++) target.partial[c * target.stride + i] = partial[c]! / weight;
  }
}
