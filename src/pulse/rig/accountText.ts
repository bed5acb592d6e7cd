/** What was kept in a run, in words for people: mass and energy with what left and what came, and the drift that should be rounding. */
import type { Account, BeyondTable, RigRun } from '../report';
import { COLDEST_MIXTURE, HOTTEST_MIXTURE } from './limits';

export function accountText({ mass, energy, steps, retries, cellUpdates, beyond }: RigRun): string {
  const again = retries === 0 ? 'none' : String(retries);
  return [
    `mass: ${account(mass, 'kg')}`,
    `energy: ${account(energy, 'J', `, ${amount(energy.fromWalls, 'J')} from walls`)}`,
    `${steps} steps, ${cellUpdates} cell updates; ${again} failed and done again smaller`,
    ...(retries > OFTEN * steps ? [AGAIN] : []),
    ...(beyond ? [beyondText(beyond)] : []),
    '',
  ].join('\n');
}

const account = ({ initial, final, left, drift }: Account, unit: string, more = ''): string =>
  `initial ${amount(initial, unit)}, final ${amount(final, unit)}, left ${amount(left, unit)}${more}, drift ${drift.toExponential(2)}`;

/** Share of steps done again from which it is worth a word. */
const OFTEN = 0.1;
const AGAIN =
  'more than one step in ten had to be done again, mostly as waves grew too fast for it: a "courant" of 0.8 or less has fewer such steps';

/** Where and when the gas was furthest beyond the table, and what that means. */
export const beyondText = ({ pipe, x, time, temperature, since }: BeyondTable): string =>
  [
    `beyond the table of heats, ${COLDEST_MIXTURE} to ${HOTTEST_MIXTURE} K: gas of ${short(temperature)} K`,
    ` in pipe "${pipe}", ${short(x)} m from its start, at ${short(time)} s`,
    ` (first seen beyond at ${short(since)} s); what came of it is not to be trusted`,
  ].join('');

const short = (value: number): string => String(Number(value.toPrecision(4)));

/** Nine digits: the drift itself is given beside, and no one subtracts these. */
const amount = (value: number, unit: string): string => `${Number(value.toPrecision(9))} ${unit}`;
