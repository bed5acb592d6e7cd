/** What was kept in a run, in words for people: mass and energy with what left and what came, and the drift that should be rounding. */
import type { Account, RigRun } from '../report';

export function accountText({ mass, energy, steps, retries, cellUpdates }: RigRun): string {
  const again = retries === 0 ? 'none' : String(retries);
  return [
    `mass: ${account(mass, 'kg')}`,
    `energy: ${account(energy, 'J', `, ${amount(energy.fromWalls, 'J')} from walls`)}`,
    `${steps} steps, ${cellUpdates} cell updates; ${again} failed and done again smaller`,
    '',
  ].join('\n');
}

const account = ({ initial, final, left, drift }: Account, unit: string, more = ''): string =>
  `initial ${amount(initial, unit)}, final ${amount(final, unit)}, left ${amount(left, unit)}${more}, drift ${drift.toExponential(2)}`;

/** Nine digits: the drift itself is given beside, and no one subtracts these. */
const amount = (value: number, unit: string): string => `${Number(value.toPrecision(9))} ${unit}`;
