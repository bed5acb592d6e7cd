/**
 * The team of a process: speeds are followed on every core. The main thread follows too, in turns between which it hears the others
 * and whether it is interrupted. Each job is followed alone from its own start, so that answers are the same whoever gives them.
 */
import type { Worker } from 'node:worker_threads';
import type { Team } from '../../pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../pulse/forecast/types';
import { type Batch, type SpeedThread, type Start, sharedNumbers, steps, stop, type ToldSpeed, takeJob } from './serve';

export type Around = {
  readonly start: Start;
  /** Starts a thread that serves speeds; absent where there are none, and the caller's own does everything. */
  readonly startThread?: (thread: SpeedThread) => Worker;
  readonly threads: number;
};

/** A thread that has not heard of the end by then is left behind, ms. */
const GRACE = 250;
/** So often whoever waits looks whether it is stopped, ms. */
const LOOK = 20;

export type Threads = Team & {
  /** Share of the job that the main thread is at, 0 to 1: for progress. */
  readonly underWay: number;
  /** Ends the further threads. */
  dismiss(): Promise<void>;
};

type Tell = (index: number, answer: SpeedAnswer | SpeedFailure) => void;

export function threadTeam(around: Around): Threads {
  const crew: { readonly worker: Worker; idleAfter: number; isGone: boolean }[] = [];
  let fault: string | null = null;
  let batches = 0;
  let hear: (told: ToldSpeed) => void = () => {};
  let underWay = 0;

  /** As many as there is work for; those that are there stay for the next batch. */
  const join = (jobs: number): void => {
    const { startThread, threads } = around;
    if (!startThread) return;
    while (crew.filter(({ isGone }) => !isGone).length < Math.min(threads, jobs) - 1) {
      const member = { worker: startThread({ kind: 'speeds' }), idleAfter: 0, isGone: false };
      member.worker.on('message', (told: ToldSpeed) => {
        if (told.kind === 'idle') member.idleAfter = told.batch;
        else if (told.kind === 'fault') fault = told.message;
        hear(told);
      });
      // One that dies leaves its jobs to the main thread.
      member.worker.on('error', () => {});
      member.worker.once('exit', () => {
        member.isGone = true;
      });
      crew.push(member);
    }
  };

  async function followOwn(batch: Batch, index: number, tell: Tell, isOver: () => boolean): Promise<void> {
    const work = steps(batch.jobs[index]!, around.start);
    for (;;) {
      const step = work.next();
      if (step.done) {
        underWay = 0;
        tell(index, step.value);
        return;
      }
      underWay = Math.min(0.99, step.value.cycles / Math.max(1, step.value.likely));
      await new Promise((resume) => setImmediate(resume));
      if (isOver()) return;
    }
  }

  async function follow(jobs: Batch['jobs'], tell: Tell, stopped: () => boolean = () => false): Promise<void> {
    const batch: Batch = { batch: ++batches, jobs, shared: sharedNumbers() };
    const isTold = jobs.map(() => false);
    const once: Tell = (index, answer) => {
      if (isTold[index]) return;
      isTold[index] = true;
      tell(index, answer);
    };
    hear = (told) => {
      if (told.kind === 'answer' && told.batch === batch.batch) once(told.index, told.answer);
    };
    const isOver = (): boolean => {
      if (fault === null && !stopped()) return false;
      stop(batch);
      return true;
    };
    join(jobs.length);
    for (const { worker, isGone } of crew) if (!isGone) worker.postMessage(batch);
    for (let n = takeJob(batch); n !== null && !isOver(); n = takeJob(batch)) await followOwn(batch, n, once, isOver);
    const isIdle = (): boolean => crew.every(({ isGone, idleAfter }) => isGone || idleAfter >= batch.batch);
    for (let since: number | null = null; !isIdle(); ) {
      if (isOver()) since ??= performance.now();
      if (since !== null && performance.now() > since + GRACE) break;
      await new Promise((resume) => setTimeout(resume, LOOK));
    }
    // What a thread had that died.
    for (let n = 0; n < jobs.length && !isOver(); n++) if (!isTold[n]) await followOwn(batch, n, once, isOver);
    hear = () => {};
    if (fault !== null) throw new Error(fault);
  }

  return {
    get underWay() {
      return underWay;
    },
    follow,
    dismiss: async () => {
      await Promise.all(crew.map(({ worker }) => worker.terminate()));
    },
  };
}
