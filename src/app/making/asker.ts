/**
 * Asks how the newest design is made, once it has rested. The worker is kept, since its solver takes a while to load; one that
 * is still at an older design is ended, since a search cannot be told to stop.
 */
import type { Design } from '../../../shared/design/types';
import type { Making } from '../../shop/making/report';
import type { MakingReply, MakingRequest } from './messages';

export type MakingEars = {
  done(design: Design, making: Making): void;
  failed(design: Design, why: string): void;
};

export type MakingAsker = {
  ask(design: Design): void;
  /** Ends what is under way and lets go of the worker. */
  end(): void;
};

export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

const newMakingWorker = (): Worker =>
  new Worker(new URL('./making.worker.ts', import.meta.url), { type: 'module', name: 'making' });

/** How long a design must stay as it is, ms: edits by number come in runs. */
export const REST = 300;

/** @param makeWorker replaced in tests */
export function createAsker(
  ears: MakingEars,
  makeWorker: () => WorkerLike = newMakingWorker,
  rest = REST,
): MakingAsker {
  let worker: WorkerLike | null = null;
  let busy = false;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked: MakingRequest = { number: 0, design: null as never };

  const drop = () => {
    worker?.terminate();
    worker = null;
    busy = false;
  };
  const start = (): WorkerLike => {
    const made = makeWorker();
    made.onmessage = ({ data }: MessageEvent<MakingReply>) => {
      // Of a worker that was ended since, what was already on its way.
      if (made !== worker || data.number !== asked.number) return;
      busy = false;
      if ('done' in data) ears.done(asked.design, data.done);
      else ears.failed(asked.design, data.failed);
    };
    made.onerror = (event) => {
      if (made !== worker) return;
      // It may be unusable: the next request starts another.
      drop();
      ears.failed(asked.design, event.message || 'The worker stopped unexpectedly.');
    };
    return made;
  };

  return {
    ask(design) {
      clearTimeout(timer);
      if (busy) drop();
      asked = { number: asked.number + 1, design };
      timer = setTimeout(() => {
        worker ??= start();
        busy = true;
        worker.postMessage(asked);
      }, rest);
    },
    end() {
      clearTimeout(timer);
      drop();
    },
  };
}
