/**
 * The one error that bad design data raises: where, what was found, what is allowed. One line, fit to show as it is.
 */
import { MAX_PROBLEMS } from './limits';

export type Refusal = {
  /** Such as `runners/r1/points/2`; ids where they are good, indices (from 0) where they are not. */
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
};

export class DesignError extends Error {
  override readonly name = 'DesignError';
  readonly path: string;
  readonly found: string;
  readonly allowed: string;
  /** Every refusal of the stage that failed, the first one above included; at most MAX_PROBLEMS are listed. */
  readonly problems: readonly Refusal[];

  /** @param problems at least one */
  constructor(problems: readonly Refusal[]) {
    const first = problems[0]!;
    const more = problems.length > 1 ? ` (and ${problems.length - 1} more)` : '';
    super(`${first.path}: found ${first.found}; allowed: ${first.allowed}${more}`);
    this.path = first.path;
    this.found = first.found;
    this.allowed = first.allowed;
    this.problems = problems.slice(0, MAX_PROBLEMS);
  }
}

/** Goes on only where nothing is refused. @throws DesignError */
export function insist(problems: readonly Refusal[]): void {
  if (problems.length > 0) throw new DesignError(problems);
}

const LONGEST_SHOWN = 60;

/** A found value in a few words: never a line break, never long. */
export function describe(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) {
    const short = value.length <= 4 && value.every((x) => typeof x === 'number');
    return short ? `[${value.map(String).join(', ')}]` : `a list of ${value.length}`;
  }
  if (value !== null && typeof value === 'object') return 'an object';
  if (typeof value === 'string')
    return oneLine(value.length > LONGEST_SHOWN ? `${value.slice(0, LONGEST_SHOWN)}…` : value);
  if (value === null || typeof value === 'boolean') return String(value);
  return `a ${typeof value}`;
}

/** In quotes, with control and line-separating characters spelled out. */
const oneLine = (text: string): string => JSON.stringify(text).replace(/[\u007f-\u009f\u2028\u2029]/g, '�');

/** `one of "a", "b"`, cut short where there are many. */
export function oneOf(ids: Iterable<string>): string {
  const all = [...ids];
  if (all.length === 0) return 'nothing: there is none to name';
  const shown = all.slice(0, 8).map(describe).join(', ');
  return `one of ${shown}${all.length > 8 ? ` and ${all.length - 8} more` : ''}`;
}
