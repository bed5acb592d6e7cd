/**
 * Follows an engine on its gas path at one speed, cycle after cycle. Time counts within the cycle, which begins where the first
 * cylinder of the firing order fires. SI units.
 */

import { GAMMA, PRESSURE, STATE, VELOCITY } from '../equations/gas';
import { ENGINE_REMEDY, FlowStopped, FOUND } from '../report';
import { pipeOfCell } from '../scheme/firstState';
import { centreOf } from '../scheme/grid';
import { advance, longestStep } from '../scheme/step';
import type { Joined } from './join';
import { portHeat } from './portHeat';

/** Share of the longest step that the fastest wave allows. */
const COURANT = 0.9;
/** Steps from one look at friction factors to the next. Slow gas has large ones: held for 16 steps they braked what set off in between, and torque wandered by 0.5 %. */
const RUBBED = 2;
/** Steps from one look at the heat of ports, the heat and the speed of the gas to the next. */
const LOOKED = 16;

/** What of the gas in the pipes was seen in the cycle: the hottest, K; the fastest at a pipe's far end, as a Mach number, and which. */
export type Extremes = { hottest: number; fastest: number; where: string };

export type Cycling = {
  readonly joined: Joined;
  readonly cellUpdates: number;
  readonly extremes: Extremes;
  /** J to the walls of the exhaust ports in the cycle that ended, from looks at even steps. */
  readonly ported: number;
  /** At most so many steps; true at the end of a cycle, where the next one begins. */
  advance(steps: number): boolean;
};

/** @param look told each step that stands, s within the cycle */
export function cycling(joined: Joined, rpm: number, look: (before: number, time: number) => void): Cycling {
  const { network, stand, ids, laws } = joined;
  const { grid } = network;
  const length = 120 / rpm;
  let time = 0;
  let steps = 0;
  let extremes: Extremes = { hottest: 0, fastest: 0, where: '' };
  let seen = extremes;
  let ported = 0;
  let sofar = 0;
  let lastLook = 0;

  const rub = () => {
    for (let k = 0; k < grid.pipes.length; k++) laws[k]?.(grid.pipes[k]!, stand.cells, network.walls.factor);
  };
  const watch = () => {
    for (let k = 0; k < grid.pipes.length; k++) {
      const pipe = grid.pipes[k]!;
      const { state, temperature } = stand.cells;
      for (let i = pipe.first; i < pipe.end; i++) if (temperature[i]! > seen.hottest) seen.hottest = temperature[i]!;
      // At its far end: behind a valve gas that blows down is fast for a moment whatever the pipe.
      const s = STATE * (pipe.end - 1);
      const sound = Math.sqrt((state[s + GAMMA]! * state[s + PRESSURE]!) / state[s]!);
      const mach = Math.abs(state[s + VELOCITY]!) / sound;
      if (mach > seen.fastest) {
        seen.fastest = mach;
        seen.where = ids[k]!;
      }
    }
  };

  const stepOnce = () => {
    // Before the first step too: what was handed over from other cells moves already.
    if (steps % RUBBED === 0) rub();
    const left = length - time;
    const longest = COURANT * longestStep(network, stand);
    // Two even steps to the end rather than a long one and a splinter.
    const dt = left <= longest ? left : left < 2 * longest ? 0.5 * left : longest;
    const taken = advance(network, stand, time, dt);
    if (!(taken > 0)) throw stopped();
    const before = time;
    time = taken === left ? length : time + taken;
    if (++steps % LOOKED === 0 || time === length) {
      watch();
      sofar += portHeat(joined) * (time - lastLook);
      lastLook = time;
    }
    look(before, time);
  };
  const stopped = (): FlowStopped => {
    const cell = Math.max(0, stand.failed);
    const k = Math.max(0, pipeOfCell(grid.pipes, cell));
    const pipe = grid.pipes[k]!;
    return new FlowStopped(time, ids[k]!, cell - pipe.first, centreOf(pipe, cell), FOUND[stand.why], ENGINE_REMEDY);
  };

  return {
    joined,
    get cellUpdates() {
      return steps * grid.cells;
    },
    get extremes() {
      return extremes;
    },
    get ported() {
      return ported;
    },
    advance(most) {
      for (let n = 0; n < most; n++) {
        stepOnce();
        if (time < length) continue;
        time = 0;
        lastLook = 0;
        ported = sofar;
        sofar = 0;
        extremes = seen;
        seen = { hottest: 0, fastest: 0, where: '' };
        return true;
      }
      return false;
    },
  };
}
