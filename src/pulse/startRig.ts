/**
 * The one file that joins gas, flux, scheme, walls and ends into a run of a rig. Everything that the loop needs is made here, once.
 */
import { makeEnd } from './ends/ends';
import { createPlanes } from './ends/planes';
import { gasOf } from './equations/gasOf';
import { carry, hllc } from './fluxes/hllc';
import { FlowStopped, FOUND, type Running, type RunOptions } from './report';
import { ductsOf } from './rig/ducts';
import { fillPipe } from './rig/fill';
import { planesOf } from './rig/places';
import type { Rig } from './rig/types';
import { accountOf } from './run/account';
import { watchTable } from './run/beyond';
import { takePicture } from './run/picture';
import { columns, placeProbe, profileOf, readProbe, seriesSoFar } from './run/probes';
import { rowsOf } from './run/schedule';
import { contentOf, pipeOfCell, settleFirst } from './scheme/firstState';
import { centreOf, gridOf } from './scheme/grid';
import { advance, longestStep, type Network, type Stand, standOf } from './scheme/step';
import { wallsOf } from './walls/wallsOf';

/** Steps from one look at all temperatures to the next: it then costs nothing. */
const LOOKED = 16;

/** The parts of a rig joined, and its first state in its cells, not yet looked at. */
export function joinRig(rig: Rig): { readonly network: Network; readonly stand: Stand } {
  const gas = gasOf(rig.gas);
  const ducts = ductsOf(rig);
  const grid = gridOf(ducts);
  const planes = createPlanes(rig.pipes.length, gas);
  planes.area.set(grid.pipes.flatMap(({ first, end }, k) => [grid.area[first + k]!, grid.area[end + k]!]));
  const network: Network = {
    gas,
    grid,
    planes,
    walls: wallsOf(rig, grid),
    flux: { pass: hllc, carry },
    ends: rig.ends.map((end) => makeEnd(end, planesOf(rig, end), planes, rig.ambient)),
  };
  const stand = standOf(network);
  for (const [k, pipe] of grid.pipes.entries()) fillPipe(gas, pipe, ducts[k]!, rig.pipes[k]!.initial, stand.cells);
  return { network, stand };
}

/** @param rig as `readRig` answers it: what it refuses is not looked for again. */
export function startRig(rig: Rig, options: RunOptions = {}): Running {
  const { duration, courant, sample } = rig;
  const { network, stand } = joinRig(rig);
  const { gas, grid } = network;
  const ids = rig.pipes.map(({ id }) => id);
  const stopAt = (time: number, cell: number, found: string): FlowStopped => {
    const k = Math.max(0, pipeOfCell(grid.pipes, cell));
    const pipe = grid.pipes[k]!;
    return new FlowStopped(time, ids[k]!, cell - pipe.first, centreOf(pipe, cell), found);
  };
  const wrong = settleFirst(network, stand);
  if (wrong >= 0) throw stopAt(0, wrong, 'no state of a gas');

  const places = rig.probes.map((probe) => placeProbe(probe, grid.pipes[ids.indexOf(probe.pipe)]!));
  const rows = rowsOf(duration, sample);
  const times = new Float64Array(rows);
  const series = places.map(() => columns(rows, gas.carried));
  const picture = takePicture(ids, grid.pipes, duration, options.pictureRows ?? 0);
  const account = accountOf(network, () => [contentOf(grid, stand.cells, 0), contentOf(grid, stand.cells, 2)]);
  const watch = 'components' in rig.gas ? watchTable(ids, grid.pipes) : null;
  let time = 0;
  let steps = 0;
  let row = 0;

  /** A last row that lies beyond the duration by rounding alone lies at the duration. */
  const instantOf = (n: number) => Math.min(n * sample, duration);
  const look = () => {
    picture.look(time, stand.cells);
    if (row >= rows || time < instantOf(row)) return;
    times[row] = time;
    for (let k = 0; k < places.length; k++) readProbe(places[k]!, stand.cells, row, series[k]!);
    row++;
  };
  const stepOnce = () => {
    const target = row < rows ? instantOf(row) : duration;
    const left = target - time;
    const longest = courant * longestStep(network, stand);
    // Two even steps to the target rather than a long one and a splinter.
    const dt = left <= longest ? left : left < 2 * longest ? 0.5 * left : longest;
    const taken = advance(network, stand, time, dt);
    if (!(taken > 0)) throw stopAt(time, Math.max(0, stand.failed), FOUND[stand.why]);
    time = taken === left ? target : time + taken;
    steps++;
    if (steps % LOOKED === 0) watch?.look(time, stand.cells.temperature);
    look();
  };
  look();

  return {
    duration,
    get time() {
      return time;
    },
    get steps() {
      return steps;
    },
    advance: (most) => {
      for (let n = 0; n < most && time < duration; n++) stepOnce();
      return time >= duration;
    },
    result: () => {
      watch?.look(time, stand.cells.temperature);
      return {
        components: gas.components,
        times: times.slice(0, row),
        probes: places.map((place, k) => seriesSoFar(place, series[k]!, row)),
        profile: grid.pipes.map((pipe, k) => profileOf(ids[k]!, pipe, stand.cells, gas)),
        picture: picture.soFar(),
        ...account(stand),
        time,
        steps,
        cellUpdates: steps * grid.cells,
        retries: stand.retries,
        beyond: watch?.found() ?? null,
      };
    },
  };
}
