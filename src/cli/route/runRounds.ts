/**
 * Runs the rounds of a search on every core. The main thread lays at once and goes on to the end, between two steps hearing
 * what others tell and whether it is interrupted. The others join only where no easy layout was there to be found: a thread
 * takes time to start, and beside another each is slower.
 */
import type { Worker } from 'node:worker_threads';
import { type Router, router } from '../../../geometry';
import { Findings } from './findings';
import { isOver, type Job, now, stop, type Told, takeRound } from './job';

export type Surroundings = {
  /** Starts a thread that serves the job; absent where there are none, and the caller's own does everything. */
  readonly startThread?: (job: Job) => Worker;
  readonly threads: number;
  /** Calls back when the user wants it to end; returns what takes that back. */
  readonly onInterrupt?: (act: () => void) => () => void;
  /** Done once, by the main thread, where nothing that holds has been found for long. */
  readonly meanwhile?: () => void;
  /** Told now and then. */
  readonly progress?: (findings: Findings) => void;
};

/** Threads join after this, or once something holds, ms. */
const JOIN_AFTER = 600;
/** What is done meanwhile is done after this, or this share of the time where that is less, ms. */
const MEANWHILE_AFTER = 3000;
const MEANWHILE_SHARE = 0.4;
/** So often the main thread hears what goes on, and tells how far it is, ms. */
const BREATH = 25;
const PROGRESS = 200;
/** Threads that have not ended by then after they should are ended, ms. */
const GRACE = 150;

/** @returns what was found, and whether the user ended it */
export async function runRounds(job: Job, around: Surroundings): Promise<{ found: Findings; interrupted: boolean }> {
  const found = new Findings();
  let interrupted = false;
  const quiet = around.onInterrupt?.(() => {
    interrupted = true;
    stop(job);
  });
  const crew = new Crew(job, around, found);
  let isExplained = false;
  const explain = (): void => {
    if (isExplained || found.firstValid !== null || isOver(job)) return;
    isExplained = true;
    around.meanwhile?.();
  };
  try {
    const own = router(job.design, job.meshes, job.options);
    const watch = watching(job, around, crew, found, explain);
    for (let n = takeRound(job); n !== null && !isOver(job); n = takeRound(job))
      await layRound(own, n, job, found, watch);
    await crew.finish();
    crew.insist();
    // What a thread had that died.
    for (let n = 0; n < job.rounds && !isOver(job); n++)
      if (!found.hasEnded(n)) await layRound(own, n, job, found, watch);
    explain();
  } finally {
    await crew.dismiss();
    quiet?.();
  }
  return { found, interrupted };
}

async function layRound(own: Router, n: number, job: Job, found: Findings, watch: () => Promise<void>): Promise<void> {
  const steps = own.steps(
    n,
    (layout) => found.found(n, now(), layout),
    () => isOver(job),
  );
  for (;;) {
    const step = steps.next();
    if (step.done) found.end(n, step.value, !isOver(job), now());
    await watch();
    if (step.done) return;
  }
}

/** What the main thread looks after between two steps of its own. */
function watching(
  job: Job,
  { progress }: Surroundings,
  crew: Crew,
  found: Findings,
  explain: () => void,
): () => Promise<void> {
  const started = now();
  const late = Math.min(MEANWHILE_AFTER, MEANWHILE_SHARE * (job.deadline - started));
  let breath = started;
  let told = started;
  return async () => {
    const at = now();
    if (at - started > JOIN_AFTER || found.firstValid !== null) crew.join();
    if (at - breath > BREATH) {
      breath = at;
      await new Promise((resume) => setImmediate(resume));
    }
    if (at - told > PROGRESS) {
      told = at;
      progress?.(found);
    }
    if (at - started > late) explain();
  };
}

/** The further threads of one search. */
class Crew {
  readonly #threads: { readonly worker: Worker; readonly gone: Promise<void> }[] = [];
  #fault: string | null = null;

  constructor(
    private readonly job: Job,
    private readonly around: Surroundings,
    private readonly found: Findings,
  ) {}

  /** Each takes rounds from now on, beside the main thread. */
  join(): void {
    const { job, around, found } = this;
    if (!around.startThread) return;
    const left = job.rounds - found.ended;
    while (this.#threads.length < Math.min(around.threads, left) - 1) {
      const worker = around.startThread(job);
      worker.on('message', (told: Told) => this.#hear(told));
      // One that dies leaves its rounds to the main thread.
      worker.on('error', () => {});
      const gone = new Promise<void>((resolve) => worker.once('exit', () => resolve()));
      this.#threads.push({ worker, gone });
    }
  }

  /** Waits until the rounds that they have are done, or time is up. */
  async finish(): Promise<void> {
    const { job, around, found } = this;
    let over = Number.POSITIVE_INFINITY;
    const watch = setInterval(() => {
      if (isOver(job)) over = Math.min(over, now());
      if (now() > over + GRACE) for (const { worker } of this.#threads) void worker.terminate();
    }, 20);
    const show = setInterval(() => around.progress?.(found), PROGRESS);
    try {
      await Promise.all(this.#threads.map(({ gone }) => gone));
    } finally {
      clearInterval(watch);
      clearInterval(show);
    }
  }

  insist(): void {
    if (this.#fault !== null) throw new Error(this.#fault);
  }

  async dismiss(): Promise<void> {
    await Promise.all(this.#threads.map(({ worker }) => worker.terminate()));
  }

  #hear(told: Told): void {
    if (told.kind === 'found') this.found.found(told.round, told.at, told.layout);
    else if (told.kind === 'round') this.found.end(told.round, told.result, told.whole, now());
    else {
      this.#fault = told.message;
      stop(this.job);
    }
  }
}
