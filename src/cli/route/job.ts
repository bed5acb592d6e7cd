/**
 * One search as the threads of a process share it: what to lay, and a few shared numbers from which each thread takes its
 * next round by itself, so that none waits for another.
 */

import type { Layout, Meshes, Round, RouterOptions } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

export type Job = {
  readonly design: Design;
  readonly meshes: Meshes;
  readonly options: RouterOptions;
  /** How many; Infinity until time is up. */
  readonly rounds: number;
  /** On the clock of `now`; Infinity for none. */
  readonly deadline: number;
  readonly shared: Int32Array;
};

/** What a thread tells: a layout that holds as soon as it is found, a round's end, a fault. */
export type Told =
  | { readonly kind: 'found'; readonly round: number; readonly at: number; readonly layout: Layout }
  | { readonly kind: 'round'; readonly round: number; readonly result: Round; readonly whole: boolean }
  | { readonly kind: 'fault'; readonly message: string };

/** Milliseconds on a clock that all threads of a process read alike. */
export const now = (): number => performance.timeOrigin + performance.now();

const NEXT = 0;
const STOP = 1;

export const sharedNumbers = (): Int32Array => new Int32Array(new SharedArrayBuffer(8));

/** The next that nobody had; null where all are taken. */
export function takeRound({ shared, rounds }: Job): number | null {
  const round = Atomics.add(shared, NEXT, 1);
  return round < rounds ? round : null;
}

export const stop = ({ shared }: Job): void => void Atomics.store(shared, STOP, 1);

export const isOver = ({ shared, deadline }: Job): boolean => Atomics.load(shared, STOP) === 1 || now() >= deadline;
