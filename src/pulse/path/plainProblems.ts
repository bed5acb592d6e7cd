/** Whether a pipe given as a length and a bore can be followed. mm, with the place in the design. */
import type { Refusal } from '../../../shared/design/refusal';
import type { PlainPipe } from '../../../shared/design/types';
import { LEAST_LENGTH } from './bores';
import { millimetres } from './metres';

/** mm: a shorter pipe is less than a cell. */
export const LEAST = millimetres(LEAST_LENGTH);
/** mm: the narrowest and the widest bore that an engine's exhaust is followed in, and the longest pipe. */
export const BORES = [5, 500] as const;
export const LONGEST = 20_000;

export function plainProblems({ length, bore }: PlainPipe, path: string, least = LEAST, why = ''): Refusal[] {
  const problems: Refusal[] = [];
  if (!(length >= least && length <= LONGEST))
    problems.push({
      path: `${path}/length`,
      found: `${length} mm`,
      allowed: `${Number(least.toFixed(1))} to ${LONGEST} mm${why}`,
    });
  if (!(bore >= BORES[0] && bore <= BORES[1]))
    problems.push({ path: `${path}/bore`, found: `${bore} mm`, allowed: `${BORES[0]} to ${BORES[1]} mm` });
  return problems;
}
