/** One long job in a worker of its own, so that cancelling is ending the worker: nothing half done can come back. */
import type { Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Answers, Reply, Request } from './messages';

export const newKernelWorker = (): Worker =>
  new Worker(new URL('./kernel.worker.ts', import.meta.url), { type: 'module', name: 'kernel' });

export class Cancelled extends Error {}

export type Task<T> = { readonly result: Promise<T>; cancel(): void };

export function startTask<Job extends keyof Answers>(job: Job, design: Design, meshes: Meshes): Task<Answers[Job]> {
  const worker = newKernelWorker();
  let cancel = () => {};
  const result = new Promise<Answers[Job]>((resolve, reject) => {
    cancel = () => reject(new Cancelled());
    worker.onerror = (event) => reject(new Error(event.message || 'The worker stopped unexpectedly.'));
    worker.onmessage = ({ data }: MessageEvent<Reply<Job>>) =>
      'done' in data ? resolve(data.done) : reject(new Error(data.failed));
    const request: Request = { job, design, meshes };
    worker.postMessage(request);
  }).finally(() => worker.terminate());
  return { result, cancel: () => cancel() };
}
