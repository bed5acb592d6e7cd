/**
 * Seeks length windows in a worker once the design has rested; a design that comes meanwhile ends the search, worker and all,
 * since its answer would be of something that is no more.
 */
import type { Meshes, Windows } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Reply, Request } from '../workers/messages';
import { newKernelWorker } from '../workers/task';

export type Sought = { readonly design: Design } & ({ readonly windows: Windows } | { readonly error: string });

export type Seeker = {
  seek(design: Design, meshes: Meshes): void;
  /** Lets go of what is under way. */
  stop(): void;
};

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** How long a design must stay as it is, ms: edits by number come in runs. */
export const REST = 500;

/** @param makeWorker replaced in tests */
export function createSeeker(
  onAnswer: (answer: Sought) => void,
  makeWorker: () => WorkerLike = newKernelWorker,
  rest = REST,
): Seeker {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let worker: WorkerLike | null = null;
  let busy = false;
  /** What the worker has. */
  let sent: Meshes | null = null;

  const drop = () => {
    worker?.terminate();
    worker = null;
    sent = null;
    busy = false;
  };

  const start = (design: Design, meshes: Meshes) => {
    worker ??= makeWorker();
    busy = true;
    worker.onmessage = ({ data }: MessageEvent<Reply<'windows'>>) => {
      busy = false;
      onAnswer('done' in data ? { design, windows: data.done } : { design, error: data.failed });
    };
    worker.onerror = (event) => {
      drop();
      onAnswer({ design, error: event.message || 'The worker stopped unexpectedly.' });
    };
    const request: Request = { job: 'windows', design, meshes: meshes === sent ? null : meshes };
    sent = meshes;
    worker.postMessage(request);
  };

  const stop = () => {
    clearTimeout(timer);
    if (busy) drop();
  };

  return {
    seek(design, meshes) {
      stop();
      timer = setTimeout(() => start(design, meshes), rest);
    },
    stop,
  };
}
