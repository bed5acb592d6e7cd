/** Every made problem by file name, as text: the same bytes each time. */
import type { Design } from '../../../shared/design/types';
import { random } from '../../random';
import { bent, dies, eightInACrowd, eightInTwoBanks, type Kind, pastHalfTurn, sixTwoOne } from './kinds';

const KINDS: readonly (readonly [string, Kind])[] = [
  ['two-banks', eightInTwoBanks],
  ['six-2-1', sixTwoOne],
  ['bent', bent],
  ['past-170', pastHalfTurn],
  ['dies', dies],
  ['eight-crowded', eightInACrowd],
];
const VARIANTS = 4;

export function ownProblems(): Map<string, string> {
  const made = new Map<string, string>();
  for (const [k, [name, kind]] of KINDS.entries())
    for (let variant = 0; variant < VARIANTS; variant++)
      made.set(`${name}-${variant + 1}.evenrun.json`, text(kind(random(100 * (k + 1) + variant), variant)));
  return made;
}

/** A thousandth is enough for a problem, and no rounding of one machine shows. */
const text = (design: Design): string =>
  `${JSON.stringify(design, (_, value) => (typeof value === 'number' ? Math.round(1000 * value) / 1000 : value), 1)}\n`;
