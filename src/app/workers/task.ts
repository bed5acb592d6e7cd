/** One long job in a worker of its own, so that cancelling is ending the worker: nothing half done can come back. */
import { packing } from '../meshes/packed';
import type { Answers, Progress, Reply, Request } from './messages';

export const newKernelWorker = (): Worker =>
  packing(new Worker(new URL('./kernel.worker.ts', import.meta.url), { type: 'module', name: 'kernel' }));

type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export class Cancelled extends Error {
  override readonly name = 'Cancelled';
}

export type Task<T> = { readonly result: Promise<T>; cancel(): void };

/** @param onProgress told what the job is at @param makeWorker replaced in tests */
export function startTask<R extends Request>(
  request: R,
  onProgress: (doing: string) => void = () => {},
  makeWorker: () => WorkerLike = newKernelWorker,
): Task<Answers[R['job']]> {
  const worker = makeWorker();
  let cancel = () => {};
  const result = new Promise<Answers[R['job']]>((resolve, reject) => {
    cancel = () => reject(new Cancelled());
    worker.onerror = (event) => reject(new Error(event.message || 'The worker stopped unexpectedly.'));
    worker.onmessage = ({ data }: MessageEvent<Reply<R['job']> | Progress>) => {
      if ('doing' in data) onProgress(data.doing);
      else if ('done' in data) resolve(data.done);
      else reject(new Error(data.failed));
    };
    worker.postMessage(request);
  }).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}
