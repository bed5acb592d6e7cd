/**
 * Keeps one worker busy with the newest design only: while it measures, later designs replace each other in the queue,
 * so a drag is answered as fast as the machine can and never falls behind.
 */
import type { CheckReport, Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { Reply, Request } from './messages';
import { newKernelWorker } from './task';

/** `more` says that a newer design is already being measured. */
export type CheckAnswer = { readonly design: Design; readonly more: boolean } & (
  | { readonly report: CheckReport }
  | { readonly error: string }
);

export type Checker = { ask(design: Design, meshes: Meshes): void; end(): void };

type Ask = { readonly design: Design; readonly meshes: Meshes };
type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** @param makeWorker replaced in tests */
export function createChecker(
  onAnswer: (answer: CheckAnswer) => void,
  makeWorker: () => WorkerLike = newKernelWorker,
): Checker {
  let worker = makeWorker();
  let sent: Meshes | null = null;
  let busy: Ask | null = null;
  let waiting: Ask | null = null;

  const send = (ask: Ask) => {
    busy = ask;
    const request: Request = { job: 'check', design: ask.design, meshes: ask.meshes === sent ? null : ask.meshes };
    sent = ask.meshes;
    worker.postMessage(request);
  };

  const settle = (outcome: { report: CheckReport } | { error: string }) => {
    const asked = busy;
    busy = null;
    const next = waiting;
    waiting = null;
    if (asked) onAnswer({ design: asked.design, more: next !== null, ...outcome });
    if (next) send(next);
  };

  const listen = () => {
    worker.onmessage = ({ data }: MessageEvent<Reply<'check'>>) =>
      settle('done' in data ? { report: data.done } : { error: data.failed });
    worker.onerror = (event) => {
      // A worker that threw outside a request may be unusable: start afresh, meshes and all.
      worker.terminate();
      worker = makeWorker();
      sent = null;
      listen();
      settle({ error: event.message || 'The worker stopped unexpectedly.' });
    };
  };
  listen();

  return {
    ask(design, meshes) {
      const ask = { design, meshes };
      if (busy) waiting = ask;
      else send(ask);
    },
    end() {
      worker.terminate();
    },
  };
}
