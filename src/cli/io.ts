/** What a command may touch besides files: where it prints, and from where paths are read. Tests pass their own. */

export type Io = {
  out(text: string): void;
  err(text: string): void;
  /** Relative paths start here. */
  readonly cwd: string;
};

/** Exit codes of the contract. */
export const HOLDS = 0;
export const FAILS = 1;
export const UNUSABLE = 2;

/** The input cannot be used: one line, what and where, shown as it is. */
export class UnusableInput extends Error {
  override readonly name = 'UnusableInput';
}

/** One line whatever is in it: a path or a library's message may hold line breaks. */
export const oneLine = (text: string): string => text.replace(/\s*[\r\n\u2028\u2029]+\s*/g, ' ').trim();
