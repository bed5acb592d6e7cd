/** A rig document as text → a rig that can be run, or every reason why not, each with its place and remedy. */
import { DesignError } from '../../../shared/design/refusal';
import type { Rig } from './types';

/** @throws DesignError with every refusal of the stage that failed. */
export function readRig(text: string): Rig {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new DesignError([
      { path: '', found: `text that is not JSON: ${(error as Error).message}`, allowed: 'one JSON object' },
    ]);
  }
  return value as Rig;
}
