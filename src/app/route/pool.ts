/**
 * As many workers as the machine has cores, each laying the header in rounds handed out by number: the next free number
 * to the next free worker. Ends when the rounds or the time are up; stopped, it ends at once and says nothing more.
 */
import type { Meshes, RouterOptions } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { packing } from '../meshes/packed';
import type { Gathering } from './gathering';
import type { RouteReply, RouteRequest } from './messages';

export type PoolWish = {
  readonly design: Design;
  readonly meshes: Meshes;
  readonly options: RouterOptions;
  /** How long to search. */
  readonly seconds: number;
  /** Rounds below this number are run; null: as many as there is time for. */
  readonly rounds: number | null;
};

export type PoolListener = {
  /** Something was found, or a round is done. */
  changed(): void;
  /** The rounds or the time are up. */
  ended(): void;
  failed(why: string): void;
};

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** What the machine offers; replaced in tests. */
export type Machine = {
  readonly cores: number;
  makeWorker(): WorkerLike;
  now(): number;
  /** @returns lets go of it */
  later(act: () => void, ms: number): () => void;
};

export type Pool = { stop(): void };

const MOST_WORKERS = 8;
/** A round that was told to end by itself may take so long to hear it, ms; then its worker is ended. */
const GRACE = 1500;

export const theMachine = (): Machine => ({
  cores: navigator.hardwareConcurrency,
  makeWorker: () =>
    packing(new Worker(new URL('./route.worker.ts', import.meta.url), { type: 'module', name: 'route' })),
  now: () => performance.now(),
  later(act, ms) {
    const timer = setTimeout(act, ms);
    return () => clearTimeout(timer);
  },
});

/** At least one where the browser does not say how many cores there are. */
export const workerCount = (cores: number): number => Math.max(1, Math.min(MOST_WORKERS, Math.floor(cores) || 1));

export function startPool(wish: PoolWish, gathering: Gathering, on: PoolListener, machine = theMachine()): Pool {
  const { design, meshes, options, rounds } = wish;
  const ends = machine.now() + 1000 * wish.seconds;
  const workers: WorkerLike[] = [];
  let busy = 0;
  let over = false;

  const close = (): void => {
    over = true;
    letGo();
    for (const worker of workers) worker.terminate();
    gathering.recall();
  };
  const end = (): void => {
    close();
    on.ended();
  };
  const fail = (why: string): void => {
    close();
    on.failed(why);
  };
  const letGo = machine.later(end, 1000 * wish.seconds + GRACE);

  const timeLeft = (): number => ends - machine.now();
  const nextRound = (): number | null => (timeLeft() > 0 ? gathering.handOut(rounds) : null);
  const hand = (worker: WorkerLike, n: number | null): void => {
    if (n === null) return;
    busy += 1;
    post(worker, { do: 'round', n, ms: timeLeft() });
  };

  const hear = (worker: WorkerLike, reply: RouteReply): void => {
    if (over) return;
    if ('failed' in reply) {
      fail(reply.failed);
      return;
    }
    if ('seen' in reply) {
      gathering.see(reply.n, reply.seen);
      on.changed();
      return;
    }
    gathering.take(reply.n, reply.round, reply.cut);
    busy -= 1;
    hand(worker, nextRound());
    on.changed();
    if (busy === 0) end();
  };

  for (let k = 0; k < workerCount(machine.cores); k++) {
    const n = nextRound();
    // Fewer rounds than cores: the rest would have nothing to do.
    if (n === null) break;
    const worker = machine.makeWorker();
    workers.push(worker);
    worker.onmessage = ({ data }: MessageEvent<RouteReply>) => hear(worker, data);
    worker.onerror = (event) => {
      if (!over) fail(event.message || 'The worker stopped unexpectedly.');
    };
    post(worker, { do: 'lay', design, meshes, options });
    hand(worker, n);
  }
  // Every round that was asked for is done already.
  if (busy === 0) machine.later(() => !over && end(), 0);

  return {
    stop() {
      if (!over) close();
    },
  };
}

const post = (worker: WorkerLike, request: RouteRequest): void => worker.postMessage(request);
