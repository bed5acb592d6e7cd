/** One long job in a worker of its own, so that cancelling is ending the worker: nothing half done can come back. */
import type { Answers, Reply, Request } from './messages';

export const newKernelWorker = (): Worker =>
  new Worker(new URL('./kernel.worker.ts', import.meta.url), { type: 'module', name: 'kernel' });

export class Cancelled extends Error {}

export type Task<T> = { readonly result: Promise<T>; cancel(): void };

export function startTask<R extends Request>(request: R): Task<Answers[R['job']]> {
  const worker = newKernelWorker();
  let cancel = () => {};
  const result = new Promise<Answers[R['job']]>((resolve, reject) => {
    cancel = () => reject(new Cancelled());
    worker.onerror = (event) => reject(new Error(event.message || 'The worker stopped unexpectedly.'));
    worker.onmessage = ({ data }: MessageEvent<Reply<R['job']>>) =>
      'done' in data ? resolve(data.done) : reject(new Error(data.failed));
    worker.postMessage(request);
  }).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}
