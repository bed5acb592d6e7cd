/**
 * A rig's run in slices short enough that whoever watches is heard in between: tells how far it is, now and then
 * what there is so far, and at last all of it. The worker's work without the worker; times in s, the clock in ms.
 */
import type { Running, RunOptions } from '../../pulse/report';
import { cellsOf } from '../../pulse/rig/ducts';
import type { Rig } from '../../pulse/rig/types';
import { FIRST_TURN, nextTurn } from '../../pulse/run/turns';
import type { Answer, Ending, Progress } from './messages';

/** What the slices stand on; replaced in tests. */
export type Ground = {
  start(rig: Rig, options: RunOptions): Running;
  /** True of what a run throws where the flow cannot be followed. */
  isStop(error: unknown): error is Error;
  now(): number;
  /** Lets messages in. */
  breathe(): Promise<void>;
};

/** How often progress is told, and when the first picture comes, ms; each later one comes later. */
const TELL_MS = 80;
const FIRST_PICTURE_MS = 150;
const LATER = 1.6;
const LAST_PICTURE_MS = 3000;

/** @param isEnded asked after every slice @param say told each answer; the last one is a `run` or `failed` */
export async function runInSlices(
  { rig, pictureRows }: { readonly rig: Rig; readonly pictureRows: number },
  ground: Ground,
  isEnded: () => boolean,
  say: (answer: Answer) => void,
): Promise<void> {
  try {
    const running = ground.start(rig, { pictureRows: rowsFor(rig, pictureRows) });
    say({ begun: true });
    await advance(running, ground, isEnded, say);
  } catch (error) {
    say({ failed: error instanceof Error ? error.message : String(error) });
  }
}

/** Values of one quantity in a picture that has three, of four bytes each: 120 MB, and as much again on the page. */
const MOST_VALUES = 10_000_000;

/** Fewer rows where there are very many cells. */
export function rowsFor(rig: Pick<Rig, 'pipes' | 'ends'>, wished: number): number {
  return Math.max(2, Math.min(wished, Math.floor(MOST_VALUES / Math.max(1, cellsOf(rig)))));
}

async function advance(running: Running, ground: Ground, isEnded: () => boolean, say: (answer: Answer) => void) {
  let steps = FIRST_TURN;
  let spent = 0;
  let told = ground.now();
  let nextPicture = told + FIRST_PICTURE_MS;
  let wait = FIRST_PICTURE_MS;
  const progress = (): Progress => ({ time: running.time, duration: running.duration, spent: spent / 1000 });
  const finish = (ending: Ending) => say({ ending, progress: progress(), run: running.result() });
  for (;;) {
    const before = ground.now();
    let whole: boolean;
    try {
      whole = running.advance(steps);
    } catch (error) {
      spent += ground.now() - before;
      if (!ground.isStop(error)) throw error;
      return finish({ how: 'stopped', why: error.message });
    }
    const now = ground.now();
    const took = now - before;
    spent += took;
    if (whole) return finish({ how: 'whole' });
    steps = nextTurn(steps, took);
    if (now >= nextPicture) {
      wait = Math.min(LAST_PICTURE_MS, wait * LATER);
      nextPicture = now + wait;
      told = now;
      say({ progress: progress(), soFar: running.result() });
    } else if (now - told >= TELL_MS) {
      told = now;
      say({ progress: progress(), soFar: null });
    }
    await ground.breathe();
    if (isEnded()) return finish({ how: 'ended' });
  }
}

/** The arrays of a run, to be handed over whole: it has them for itself. */
export function buffersOf(value: unknown): ArrayBuffer[] {
  if (value instanceof Float64Array || value instanceof Float32Array) return [value.buffer as ArrayBuffer];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(buffersOf);
}
