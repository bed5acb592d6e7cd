/**
 * Has parts made once the design has rested a moment. One worker is kept, since the kernels that it loads are large; a newer
 * request ends an older one in it, and answers to older ones are not heard.
 */
import type { Design } from '../../../shared/design/types';
import type { MakeReply, MakeRequest, ShownMade } from './messages';

export type MakerEars = {
  /** The kind of part that is being made. */
  doing(what: string): void;
  done(design: Design, made: ShownMade): void;
  failed(design: Design, why: string): void;
};

export type Maker = { make(design: Design): void; end(): void };

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** How long a design must stay as it is, ms: edits by number come in runs, and nobody waits for less. */
export const REST = 120;

const newMadeWorker = (): Worker =>
  new Worker(new URL('./made.worker.ts', import.meta.url), { type: 'module', name: 'parts' });

/** @param makeWorker replaced in tests */
export function createMaker(ears: MakerEars, makeWorker: () => WorkerLike = newMadeWorker, rest = REST): Maker {
  let worker: WorkerLike | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked: MakeRequest = { number: 0, design: null as never };

  const start = (): WorkerLike => {
    const made = makeWorker();
    made.onmessage = ({ data }: MessageEvent<MakeReply>) => {
      if (data.number !== asked.number) return;
      if ('doing' in data) ears.doing(data.doing);
      else if ('done' in data) ears.done(asked.design, data.done);
      else ears.failed(asked.design, data.failed);
    };
    made.onerror = (event) => {
      // It may be unusable: the next request starts another.
      made.terminate();
      worker = null;
      ears.failed(asked.design, event.message || 'The worker stopped unexpectedly.');
    };
    return made;
  };

  return {
    make(design) {
      clearTimeout(timer);
      // From now on whatever comes is of something that is no more.
      asked = { number: asked.number + 1, design };
      timer = setTimeout(() => {
        worker ??= start();
        worker.postMessage(asked);
      }, rest);
    },
    end() {
      clearTimeout(timer);
      worker?.terminate();
      worker = null;
    },
  };
}
