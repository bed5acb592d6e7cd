/** A team for as long as a command follows speeds: every core, a line of progress, and Ctrl+C heard until all is written and told. */
import { secondsLeft, spanText } from '../../pulse/rig/outlook';
import { type Io, UnusableInput } from '../io';
import type { Start } from './serve';
import { type Threads, threadTeam } from './threads';

/** So often progress is told, ms. */
const PROGRESS = 200;

export type Progress = { readonly done: number; readonly tell: () => void };

export type Session = {
  readonly team: Threads;
  readonly interrupted: () => boolean;
  /** Shows how far it is from now on. @param what such as `speeds` @param all a guess may grow @param before how many are there already */
  watch(what: string, all: number | (() => number), before?: number): Progress;
  /** Seconds since the session began. */
  seconds(): number;
};

export async function session<T>(
  io: Io,
  threads: number,
  start: Start,
  act: (session: Session) => Promise<T>,
): Promise<T> {
  const { onInterrupt, startThread, status = () => {} } = io.process ?? {};
  let isInterrupted = false;
  const quiet = onInterrupt?.(() => {
    isInterrupted = true;
  });
  const team = threadTeam({ start, threads, ...(startThread ? { startThread } : {}) });
  const began = performance.now();
  let line = (): string => '';
  const ticking = setInterval(() => status(line()), PROGRESS);
  ticking.unref();
  try {
    return await act({
      team,
      interrupted: () => isInterrupted,
      watch(what, all, before = 0) {
        const from = performance.now();
        let done = before;
        line = () => {
          const count = typeof all === 'number' ? all : all();
          const left = secondsLeft((performance.now() - from) / 1000, done - before + team.underWay, count - before);
          return `${done} of ${count} ${what}${left === null ? '' : `, ${spanText(left)} left`}`;
        };
        return {
          get done() {
            return done;
          },
          tell: () => void done++,
        };
      },
      seconds: () => (performance.now() - began) / 1000,
    });
  } finally {
    clearInterval(ticking);
    status('');
    await team.dismiss();
    quiet?.();
  }
}

/** Nothing is written over what may be good where an interrupt came before the first answer. */
export const hasNothing = (interrupted: () => boolean, done: number): boolean => interrupted() && done === 0;

/** Said of an interrupt on standard error. */
export const interruptText = (done: number, all: number): string =>
  `evenrun: interrupted with ${done} of ${all} speeds followed${done === 0 ? '; nothing is written' : ''}\n`;

/** Writes what there is to write; what cannot be written is told and takes nothing else with it. @returns names of what is written */
export function writeAll(writes: readonly { readonly name: string; readonly write: () => void }[], io: Io): string[] {
  return writes.flatMap(({ name, write }) => {
    try {
      write();
      return [name];
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      io.err(`evenrun: ${error.message}\n`);
      return [];
    }
  });
}
