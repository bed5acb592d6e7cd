/** One rule of many tables: each row's number lies above the one before it. */
import type { Refusal } from './refusal';

/** The first that does not rise. @param what a number of the column is called. @param how rows are to be put in order */
export function risingProblems(path: string, values: readonly number[], what: string, how: string): Refusal[] {
  const at = values.findIndex((value, i) => i > 0 && value <= values[i - 1]!);
  if (at < 0) return [];
  const found = `${values[at]} after ${values[at - 1]}`;
  return [{ path: `${path}/${at}`, found, allowed: `a ${what} above the one before: ${how}` }];
}
