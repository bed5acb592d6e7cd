/**
 * One speed of an engine on its gas path, from a guess to a cycle that repeats itself: first on coarse cells until that is nearly so,
 * then on the cells asked for until torque settles within 0.1 %. What does not settle is said to be so. SI units.
 */
import type { Counts } from '../engine/counts';
import { meanPistonSpeed } from '../engine/crank';
import { type Cycling, cycling } from '../engine/cycles';
import { type Joined, joinEngine } from '../engine/join';
import { type Recorder, recorder } from '../engine/recorder';
import { transfer } from '../engine/transfer';
import { USUAL_CELL } from './cells';
import { type CycleSums, countsOf, cycleSums } from './cycleSums';
import { doubtsOf } from './doubts';
import type { RunningSpeed, SpeedJob } from './job';
import { SETTLED, settling } from './settling';
import type { SpeedAnswer } from './types';

/** Coarse cells are so many times as long, up to so much, m. */
const COARSER = 3;
const COARSEST = 0.045;

/** Change of torque that counts as settled on coarse cells. */
const NEARLY = 3e-3;
/** A cylinder by itself may move so many times as much: cylinders that drift apart would not show in their sum. */
const EACH = 3;
/** What a cycle leaves in the intake or takes from it, of what it draws: a large plenum fills for long, and torque hardly tells. */
const STORED = 3e-3;
/** Cycles at most, on coarse cells and on the last ones; and about how many there are. */
const MOST_COARSE = 24;
const MOST_FINE = 24;
const LIKELY = 9;

type Level = { readonly joined: Joined; readonly cycling: Cycling; readonly recorder: Recorder | null };

export function startSpeed({ engine, path, rpm, cell = USUAL_CELL, keep = 'numbers' }: SpeedJob): RunningSpeed {
  const coarse = Math.max(cell, Math.min(COARSER * cell, COARSEST));
  let isFine = coarse < 1.5 * cell;
  let level = levelOf(isFine ? cell : coarse, isFine);
  let torque = settling();
  let works = engine.cylinders.map(settling);
  let before: Counts[] = countsOf(level.joined);
  let drawn = 0;
  let stored = Infinity;
  let sums: CycleSums | null = null;
  let cycles = 0;
  let onLevel = 0;
  let updates = 0;
  let done = false;

  function levelOf(length: number, last: boolean): Level {
    const joined = joinEngine(engine, path, rpm, length);
    const writes = last && keep !== 'numbers' ? recorder(joined, engine.cylinders, 6 * rpm, keep === 'waves') : null;
    return { joined, cycling: cycling(joined, rpm, writes ? writes.look : () => {}), recorder: writes };
  }

  function endCycle(): void {
    cycles++;
    onLevel++;
    sums = cycleSums(engine, level.joined, rpm, before, level.cycling.ported);
    const counts = countsOf(level.joined);
    stored = storedIn(before, counts);
    before = counts;
    // The first cycle has no whole one behind it.
    torque.add(sums.torque);
    for (const [k, { imep }] of sums.cylinders.entries()) works[k]!.add(imep);
    const close = isFine ? SETTLED : NEARLY;
    const isSettled = isWithin(close);
    if (isFine) done = isSettled || onLevel >= MOST_FINE;
    else if (isSettled || onLevel >= MOST_COARSE) refine();
  }

  const isWithin = (close: number): boolean =>
    torque.drift < close && torque.ahead < close && stored < STORED && works.every(({ drift }) => drift < EACH * close);

  /** Of what the cylinders drew in the cycle: how much more or less came in from outside. */
  function storedIn(from: readonly Counts[], to: readonly Counts[]): number {
    const { plenum } = level.joined;
    if (!plenum) return 0;
    const came = plenum.drawn - drawn;
    drawn = plenum.drawn;
    const taken = to.reduce((sum, { fresh }, k) => sum + fresh - from[k]!.fresh, 0);
    return Math.abs(came / taken - 1);
  }

  function refine(): void {
    const finer = levelOf(cell, true);
    updates += level.cycling.cellUpdates;
    transfer(level.joined, finer.joined);
    level = finer;
    before = countsOf(level.joined);
    isFine = true;
    onLevel = 0;
    torque = settling();
    works = engine.cylinders.map(settling);
  }

  return {
    get cycles() {
      return cycles;
    },
    get likely() {
      return Math.max(LIKELY, cycles + 1);
    },
    advance(steps) {
      if (!done && level.cycling.advance(steps)) endCycle();
      return done;
    },
    answer(): SpeedAnswer {
      const isSettled = isWithin(SETTLED);
      return {
        ...sums!,
        cycles,
        fineCycles: onLevel,
        settled: isSettled,
        drift: torque.drift,
        cell,
        cellUpdates: updates + level.cycling.cellUpdates,
        doubts: doubtsOf({
          isSettled,
          drift: torque.drift,
          stored,
          cycles,
          extremes: level.cycling.extremes,
          pistonSpeed: meanPistonSpeed(engine.stroke, rpm),
          cell,
        }),
        traces: level.recorder?.traces() ?? null,
        waves: level.recorder?.waves() ?? null,
      };
    },
  };
}

/** Follows a speed to its end at once. */
export function followSpeed(job: SpeedJob): SpeedAnswer {
  const running = startSpeed(job);
  while (!running.advance(10_000));
  return running.answer();
}
