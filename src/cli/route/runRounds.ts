/**
 * Runs the rounds of a search on every core. The main thread lays at once, warm and alone, because a new thread takes a
 * tenth of a second before it finds anything; the others join behind it. After its first round the main thread only
 * listens, so that an interrupt and the end of time are heard at once; the rounds then all belong to the others.
 */
import type { Worker } from 'node:worker_threads';
import { type Router, router } from '../../../geometry';
import { Findings } from './findings';
import { handBackFirst, isOver, type Job, now, stop, type Told, takeRound } from './job';

export type Surroundings = {
  /** Starts a thread that serves the job; absent where there are none, and the caller's own does everything. */
  readonly startThread?: (job: Job) => Worker;
  readonly threads: number;
  /** Calls back when the user wants it to end; returns what takes that back. */
  readonly onInterrupt?: (act: () => void) => () => void;
  /** Done by the main thread while others lay, where the first round found nothing that holds. */
  readonly meanwhile?: () => void;
  /** Told now and then. */
  readonly progress?: (findings: Findings) => void;
};

/** Threads join after this, or once the first round ends: starting one takes time from an easy first layout, ms. */
const JOIN_AFTER = 40;
/** A first round that lasts longer is handed to the others, so that the main thread can listen, ms. */
const LISTEN_AFTER = 1000;
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
  try {
    const own = router(job.design, job.meshes, job.options);
    firstRound(own, job, crew, found);
    if (around.startThread && !isOver(job)) await crew.finish(around.threads);
    crew.insist();
    await restOfRounds(own, job, around, found);
  } finally {
    await crew.dismiss();
    quiet?.();
  }
  return { found, interrupted };
}

function firstRound(own: Router, job: Job, crew: Crew, found: Findings): void {
  const first = takeRound(job);
  if (first === null) return;
  const started = now();
  let handedBack = false;
  const stopped = (): boolean => {
    const spent = now() - started;
    if (spent > JOIN_AFTER) crew.join();
    if (spent > LISTEN_AFTER && crew.size > 0) handedBack = true;
    return handedBack || isOver(job);
  };
  const result = own.round(first, (layout) => found.found(first, now(), layout), stopped);
  if (handedBack && !isOver(job)) handBackFirst(job);
  else found.end(first, result, !isOver(job), now());
}

/** What no thread did: all of it where there are none, and the round that one had which died. */
async function restOfRounds(
  own: Router,
  job: Job,
  { progress, meanwhile, startThread }: Surroundings,
  found: Findings,
): Promise<void> {
  if (!startThread && found.firstValid === null && !isOver(job)) meanwhile?.();
  for (let n = 0; n < job.rounds && !isOver(job); n++) {
    if (found.hasEnded(n)) continue;
    const result = own.round(
      n,
      (layout) => found.found(n, now(), layout),
      () => isOver(job),
    );
    found.end(n, result, !isOver(job), now());
    progress?.(found);
    // Lets an interrupt be heard.
    await new Promise((resume) => setImmediate(resume));
  }
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

  get size(): number {
    return this.#threads.length;
  }

  /** While the main thread lays too: a core is its own. */
  join(): void {
    if (this.around.startThread) this.#grow(this.around.threads - 1);
  }

  /** Waits until every round is done, or time is up. */
  async finish(threads: number): Promise<void> {
    const { job, around, found } = this;
    const left = job.rounds - found.ended;
    this.#grow(Math.min(threads, Math.max(left, this.size)));
    if (found.firstValid === null) around.meanwhile?.();
    let over = Number.POSITIVE_INFINITY;
    const watch = setInterval(() => {
      if (isOver(job)) over = Math.min(over, now());
      if (now() > over + GRACE) this.#end();
    }, 20);
    const show = setInterval(() => around.progress?.(found), 200);
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

  #end(): void {
    for (const { worker } of this.#threads) void worker.terminate();
  }

  #grow(to: number): void {
    while (this.#threads.length < to) {
      const worker = this.around.startThread!(this.job);
      worker.on('message', (told: Told) => this.#hear(told));
      // One that dies leaves its rounds to the main thread.
      worker.on('error', () => {});
      const gone = new Promise<void>((resolve) => worker.once('exit', () => resolve()));
      this.#threads.push({ worker, gone });
    }
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
