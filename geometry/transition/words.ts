/** Sizes in what is said of ports and transitions, in the unit that the design is shown in. mm, mm². */
import type { Display } from '../../shared/design/types';
import { type Say, sayIn } from '../check/words';

export type Words = {
  readonly say: Say;
  readonly area: (mm2: number) => string;
  /** To a whole last digit of what is said, so that what a message asks for holds when typed. */
  readonly up: (mm: number) => number;
  readonly down: (mm: number) => number;
};

const MM_IN_INCH = 25.4;
/** Less than this over a whole digit is rounding, not length. */
const SLACK = 1e-6;

export function wordsIn(display: Display = 'mm'): Words {
  const inches = display === 'in';
  const digit = inches ? MM_IN_INCH / 1000 : 1 / 100;
  return {
    say: sayIn(display),
    area: (mm2) => (inches ? `${(mm2 / MM_IN_INCH ** 2).toFixed(3)} in²` : `${mm2.toFixed(1)} mm²`),
    up: (mm) => Math.ceil(mm / digit - SLACK) * digit,
    down: (mm) => Math.floor(mm / digit + SLACK) * digit,
  };
}
