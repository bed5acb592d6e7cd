/**
 * What the threads of a process share to follow speeds: lists of jobs that all of them know, and a number from which each takes its
 * next job by itself, so that none waits for another. And the thread's side of it.
 */
import type { MessagePort } from 'node:worker_threads';
import type { RunningSpeed, SpeedJob } from '../../pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../pulse/forecast/types';
import { FlowStopped } from '../../pulse/report';
import { FIRST_TURN, nextTurn } from '../../pulse/run/turns';

/** What a thread that follows speeds is started with; a thread that lays headers is started with its search. */
export type SpeedThread = { readonly kind: 'speeds' };

/** A list of jobs, sent to every thread. */
export type Batch = { readonly batch: number; readonly jobs: readonly SpeedJob[]; readonly shared: Int32Array };

export type Start = (job: SpeedJob) => RunningSpeed;

/** What a thread tells: an answer, that it finds no more jobs in the batch, a fault of the program. */
export type ToldSpeed =
  | {
      readonly kind: 'answer';
      readonly batch: number;
      readonly index: number;
      readonly answer: SpeedAnswer | SpeedFailure;
    }
  | { readonly kind: 'idle'; readonly batch: number }
  | { readonly kind: 'fault'; readonly message: string };

const NEXT = 0;
const STOP = 1;

export const sharedNumbers = (): Int32Array => new Int32Array(new SharedArrayBuffer(8));

/** The next that nobody had; null where all are taken, or none shall be begun any more. */
export function takeJob({ shared, jobs }: Batch): number | null {
  if (isStopped({ shared })) return null;
  const index = Atomics.add(shared, NEXT, 1);
  return index < jobs.length ? index : null;
}

export const stop = ({ shared }: Pick<Batch, 'shared'>): void => void Atomics.store(shared, STOP, 1);

export const isStopped = ({ shared }: Pick<Batch, 'shared'>): boolean => Atomics.load(shared, STOP) === 1;

/**
 * One job to its end, in turns that the caller may breathe between. Whatever is thrown is a failure of that speed alone, so that
 * no other answer is lost by it; a fault of the program is called one.
 */
export function* steps(job: SpeedJob, start: Start): Generator<RunningSpeed, SpeedAnswer | SpeedFailure, void> {
  try {
    const running = start(job);
    let turn = FIRST_TURN;
    for (let isDone = false; !isDone; ) {
      const at = performance.now();
      isDone = running.advance(turn);
      turn = nextTurn(turn, performance.now() - at);
      yield running;
    }
    return running.answer();
  } catch (error) {
    if (error instanceof FlowStopped) return { rpm: job.rpm, failed: error.message };
    const words = error instanceof Error ? error.message : String(error);
    return { rpm: job.rpm, failed: `A fault of the program, not of the design; please report it: ${words}` };
  }
}

/** A further thread: follows the jobs of every batch that it is sent, until it is ended. */
export function serveSpeeds(port: MessagePort, start: Start): void {
  const tell = (told: ToldSpeed): void => port.postMessage(told);
  port.on('message', (batch: Batch) => {
    try {
      for (let index = takeJob(batch); index !== null; index = takeJob(batch)) {
        const work = steps(batch.jobs[index]!, start);
        for (;;) {
          const step = work.next();
          if (step.done) tell({ kind: 'answer', batch: batch.batch, index, answer: step.value });
          if (step.done || isStopped(batch)) break;
        }
      }
      tell({ kind: 'idle', batch: batch.batch });
    } catch (error) {
      tell({ kind: 'fault', message: error instanceof Error ? error.message : String(error) });
    }
  });
}
