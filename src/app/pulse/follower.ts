/**
 * Keeps one worker at the newest rig. A newer rig ends the older one's worker, so nothing of it can come back; to end a run is
 * asked for first, because the worker then hands over what it has, and done by force where it does not hear.
 */
import type { Rig } from '../../pulse/rig/types';
import type { Answer, FollowReply, FollowRequest } from './messages';

export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export type Follower = {
  follow(rig: Rig, pictureRows: number): void;
  /** Asks for what there is. */
  end(): void;
  /** Lets go of the worker; nothing more is told. */
  drop(): void;
};

const newWorker = (): Worker =>
  new Worker(new URL('./waves.worker.ts', import.meta.url), { type: 'module', name: 'waves' });

/** How long a run may take to hear that it should end, ms. */
export const GRACE = 1500;

/**
 * @param say told each answer to the newest request; null where it was ended by force and hands nothing over
 * @param makeWorker replaced in tests
 */
export function createFollower(
  say: (answer: Answer | null) => void,
  makeWorker: () => WorkerLike = newWorker,
): Follower {
  let worker: WorkerLike | null = null;
  let busy = false;
  let number = 0;
  let grace: ReturnType<typeof setTimeout> | undefined;

  const settle = () => {
    clearTimeout(grace);
    busy = false;
  };
  const drop = () => {
    worker?.terminate();
    worker = null;
    settle();
  };
  const start = (): WorkerLike => {
    const made = makeWorker();
    made.onmessage = ({ data }: MessageEvent<FollowReply>) => {
      // Of a worker that was ended since, or of a rig before, what was already on its way.
      if (made !== worker || data.number !== number || !busy) return;
      const { answer } = data;
      if (!('begun' in answer || 'soFar' in answer)) settle();
      say(answer);
    };
    made.onerror = (event) => {
      if (made !== worker) return;
      // It may be unusable: the next rig starts another.
      drop();
      say({ failed: event.message || 'The worker stopped unexpectedly.' });
    };
    return made;
  };
  const ask = (request: FollowRequest) => worker?.postMessage(request);

  return {
    follow(rig, pictureRows) {
      if (busy) drop();
      worker ??= start();
      busy = true;
      number += 1;
      ask({ number, rig, pictureRows });
    },
    end() {
      if (!busy) return;
      ask({ number, end: true });
      clearTimeout(grace);
      grace = setTimeout(() => {
        drop();
        say(null);
      }, GRACE);
    },
    drop,
  };
}
