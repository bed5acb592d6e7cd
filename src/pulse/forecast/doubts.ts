/** What of a speed's answer deserves less trust, in words. SI units. */
import type { Extremes } from '../engine/cycles';
import { HOTTEST_MIXTURE } from '../rig/limits';
import { USUAL_CELL } from './cells';
import { SETTLED } from './settling';
import type { Doubt } from './types';

/** Where gas leaves a pipe this near to the speed of sound, models of joints are least sure. */
const SONIC = 0.95;
/** m/s: engines that last run below it. */
const FAST = 25;
/** m: longer cells than usual blur the waves. */
const COARSE = 1.01 * USUAL_CELL;

type Known = {
  readonly isSettled: boolean;
  readonly drift: number;
  /** Of what the cycle drew: what the intake kept or gave. */
  readonly stored: number;
  readonly cycles: number;
  readonly extremes: Extremes;
  readonly pistonSpeed: number;
  readonly cell: number;
};

export function doubtsOf({ isSettled, drift, stored, cycles, extremes, pistonSpeed, cell }: Known): Doubt[] {
  const doubts: Doubt[] = [];
  const say = (kind: Doubt['kind'], message: string) => doubts.push({ kind, message });
  if (!isSettled)
    say(
      'unsettled',
      stored > 0.01
        ? `after ${cycles} cycles the intake still filled or emptied by ${percent(stored)} of what a cycle draws: its plenum is large for its throttle`
        : drift < SETTLED
          ? `after ${cycles} cycles torque moved by no more than ${percent(drift)}, but more of the same lies ahead, or a cylinder by itself or the intake is not at rest`
          : `torque still moved by ${percent(drift)} in the last of ${cycles} cycles: it may swing from cycle to cycle`,
    );
  if (extremes.hottest > HOTTEST_MIXTURE)
    say('hot', `gas in the pipes came to ${extremes.hottest.toFixed(0)} K, beyond what its heats are known for`);
  if (extremes.fastest > SONIC)
    say(
      'sonic',
      `gas leaving ${extremes.where} came to Mach ${extremes.fastest.toFixed(2)}: joints and mouths are least sure there`,
    );
  if (pistonSpeed > FAST)
    say(
      'fast',
      `the mean piston speed is ${pistonSpeed.toFixed(1)} m/s: few engines last above ${FAST} m/s, and friction is guessed there`,
    );
  if (cell > COARSE) say('coarse', `cells of ${(1000 * cell).toFixed(0)} mm blur the waves: good for comparing sizes`);
  return doubts;
}

const percent = (share: number): string =>
  Number.isFinite(share) ? `${(100 * share).toFixed(2)} %` : 'an unknown amount';
