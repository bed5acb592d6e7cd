/** What a command may touch besides files: where it prints, and from where paths are read. Tests pass their own. */
import type { Worker } from 'node:worker_threads';
import type { SpeedThread } from './pulse/serve';
import type { Job } from './route/job';

export type Io = {
  out(text: string): void;
  err(text: string): void;
  /** Relative paths start here. */
  readonly cwd: string;
  /** What only a process of its own has: further threads, interrupts, a terminal to show progress on. */
  readonly process?: {
    startThread(job: Job | SpeedThread): Worker;
    /** @returns what takes it back */
    onInterrupt(act: () => void): () => void;
    /** Replaces the line shown before; an empty one clears it. Absent where standard error is no terminal. */
    readonly status?: (line: string) => void;
  };
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
