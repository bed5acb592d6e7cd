/**
 * What reading an engine out of a design leaves behind: what is wrong, all of it at once, and what nobody gave. One pair is passed from
 * part to part, so that a builder sees the whole list and not its first line.
 */
import type { Refusal } from '../../../../shared/design/refusal';
import type { Assumed } from '../types';

export type Notes = { readonly problems: Refusal[]; readonly assumed: Assumed[] };

export type Usual<T> = Omit<Assumed, 'path'> & { readonly value: T };

export const refuse = (notes: Notes, path: string, found: string, allowed: string): void => {
  notes.problems.push({ path, found, allowed });
};

export const assume = (notes: Notes, path: string, name: string, taken: string, why: string): void => {
  notes.assumed.push({ path, name, taken, why });
};

/** What was given; else the usual value, noted. */
export function givenOr<T>(notes: Notes, path: string, given: T | undefined, usual: () => Usual<T>): T {
  if (given !== undefined) return given;
  const { value, name, taken, why } = usual();
  assume(notes, path, name, taken, why);
  return value;
}

/** As people read it: at most so many digits behind the point, and no noughts at the end. */
export const told = (value: number, digits = 1): string => String(Number(value.toFixed(digits)) + 0);

export const PRACTICE = 'common practice';
