/**
 * As many workers as the machine has cores, each at one speed of an engine: the next job to the next free worker. What is
 * asked for at once comes before what waits; what is stopped is ended with its worker, for a speed does not look up.
 */
import type { SpeedJob, Team } from '../../../pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../../pulse/forecast/types';
import type { SpeedReply, SpeedRequest } from './messages';

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onmessageerror' | 'onerror'>;

/** What the machine offers; replaced in tests. */
export type Machine = {
  readonly cores: number;
  makeWorker(): WorkerLike;
  /** Calls again and again. @returns lets go of it */
  every(act: () => void, ms: number): () => void;
};

export const theMachine = (): Machine => ({
  cores: navigator.hardwareConcurrency,
  makeWorker: () => new Worker(new URL('./forecast.worker.ts', import.meta.url), { type: 'module', name: 'forecast' }),
  every(act, ms) {
    const timer = setInterval(act, ms);
    return () => clearInterval(timer);
  },
});

/** How soon a stop is heard, ms. */
const LOOK_MS = 60;

type Batch = {
  readonly jobs: readonly SpeedJob[];
  readonly tell: (index: number, answer: SpeedAnswer | SpeedFailure) => void;
  readonly share: (index: number, done: number) => void;
  readonly stopped: () => boolean;
  readonly over: () => void;
  /** Handed out so far, and told. */
  next: number;
  told: number;
};

type Post = { readonly worker: WorkerLike; doing: { batch: Batch; index: number; number: number } | null };

/** How far one job is, 0 to 1, while it is followed. */
export type Share = (index: number, done: number) => void;

export type Crew = Team & {
  /** As `follow`, before all that waits, and telling how far each is. */
  ahead(jobs: readonly SpeedJob[], tell: Batch['tell'], stopped?: () => boolean, share?: Share): Promise<void>;
  /** Lets go of every worker; what is under way is told no more. */
  end(): void;
};

export function createCrew(machine: Machine = theMachine()): Crew {
  const most = Math.max(1, Math.floor(machine.cores) || 1);
  const posts: Post[] = [];
  let batches: Batch[] = [];
  let numbers = 0;
  let rest: (() => void) | null = null;

  const dismiss = (post: Post): void => {
    post.worker.terminate();
    posts.splice(posts.indexOf(post), 1);
  };

  const close = (batch: Batch): void => {
    if (!batches.includes(batch)) return;
    batches = batches.filter((other) => other !== batch);
    for (const post of [...posts]) if (post.doing?.batch === batch) dismiss(post);
    batch.over();
  };

  const look = (): void => {
    for (const batch of batches) if (batch.stopped()) close(batch);
    handOut();
    if (batches.length > 0) return;
    rest?.();
    rest = null;
  };

  const take = (post: Post, answer: SpeedAnswer | SpeedFailure): void => {
    const { batch, index } = post.doing!;
    post.doing = null;
    batch.told += 1;
    if (batch.stopped()) close(batch);
    else {
      batch.tell(index, answer);
      if (batch.told === batch.jobs.length) close(batch);
    }
    look();
  };

  const hire = (): Post => {
    const worker = machine.makeWorker();
    const post: Post = { worker, doing: null };
    worker.onmessage = ({ data }: MessageEvent<SpeedReply>) => {
      if (!posts.includes(post) || post.doing?.number !== data.number) return;
      if ('told' in data) take(post, data.told);
      else post.doing.batch.share(post.doing.index, data.share);
    };
    const fail = (why: string): void => {
      if (!posts.includes(post)) return;
      // It may be unusable: the next job gets another.
      dismiss(post);
      if (!post.doing) return;
      const { batch, index } = post.doing;
      take(post, { rpm: batch.jobs[index]!.rpm, failed: why });
    };
    worker.onerror = ({ message }) => fail(message || 'The worker stopped unexpectedly.');
    worker.onmessageerror = () => fail('The worker’s answer could not be read.');
    posts.push(post);
    return post;
  };

  /** A job that cannot be given to any worker is told as a failure: the others go on. */
  const refuse = (batch: Batch, index: number, error: unknown): void => {
    batch.told += 1;
    batch.tell(index, { rpm: batch.jobs[index]!.rpm, failed: error instanceof Error ? error.message : String(error) });
    if (batch.told === batch.jobs.length) close(batch);
  };

  const handOut = (): void => {
    for (const batch of batches)
      while (batch.next < batch.jobs.length) {
        const idle = posts.find((post) => post.doing === null);
        if (!idle && posts.length >= most) return;
        const index = batch.next++;
        try {
          const post = idle ?? hire();
          const number = ++numbers;
          post.worker.postMessage({ number, job: batch.jobs[index]! } satisfies SpeedRequest);
          post.doing = { batch, index, number };
        } catch (error) {
          refuse(batch, index, error);
        }
      }
  };

  const begin = (
    first: boolean,
    jobs: readonly SpeedJob[],
    tell: Batch['tell'],
    stopped: () => boolean = () => false,
    share: Share = () => {},
  ): Promise<void> =>
    new Promise((over) => {
      if (jobs.length === 0 || stopped()) return over();
      const batch: Batch = { jobs, tell, share, stopped, over, next: 0, told: 0 };
      batches = first ? [batch, ...batches] : [...batches, batch];
      rest ??= machine.every(look, LOOK_MS);
      handOut();
    });

  return {
    follow: (jobs, tell, stopped) => begin(false, jobs, tell, stopped),
    ahead: (jobs, tell, stopped, share) => begin(true, jobs, tell, stopped, share),
    end() {
      for (const batch of batches) close(batch);
      for (const post of [...posts]) dismiss(post);
      rest?.();
      rest = null;
    },
  };
}
