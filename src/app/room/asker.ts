/**
 * A worker that looks into the room round the newest design only. `live` asks at once and never falls behind: while one design
 * is looked at, later ones replace each other. `resting` waits until the design rests; a design that comes meanwhile ends what
 * is under way, worker and all, since its answer would be of something that is no more.
 */
import type { Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { packing } from '../meshes/packed';
import type { Question, RoomAnswers, RoomReply, RoomRequest } from './messages';

export type Heard = {
  /** @param more a newer design waits for the same answer */
  answered<Q extends Question>(question: Q, design: Design, value: RoomAnswers[Q], more: boolean): void;
  failed(question: Question, error: string, more: boolean): void;
};

export type Asker = {
  /** Puts questions about a design, in place of all that were put before and are not answered. */
  ask(questions: readonly Question[], design: Design, meshes: Meshes): void;
  /** Ends what is under way and lets go of the worker, with the meshes that it holds. */
  end(): void;
};

export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

export const newRoomWorker = (): Worker =>
  packing(new Worker(new URL('./room.worker.ts', import.meta.url), { type: 'module', name: 'room' }));

/** How long a design must stay as it is, ms: edits by number come in runs. */
export const REST = 300;

type Ask = { readonly questions: readonly Question[]; readonly design: Design; readonly meshes: Meshes };

/** The worker and the one question that it is at. */
function line(makeWorker: () => WorkerLike, heard: (question: Question, reply: RoomReply) => void) {
  let worker: WorkerLike | null = null;
  let sent: Meshes | null = null;
  let at: Question | null = null;
  const drop = () => {
    worker?.terminate();
    worker = null;
    sent = null;
    at = null;
  };
  return {
    get busy() {
      return at !== null;
    },
    send(question: Question, design: Design, meshes: Meshes) {
      if (!worker) {
        worker = makeWorker();
        worker.onmessage = ({ data }: MessageEvent<RoomReply>) => {
          at = null;
          heard(data.question, data);
        };
        worker.onerror = (event) => {
          const broken = at;
          // It may be unusable: the next question starts another.
          drop();
          if (broken) heard(broken, { question: broken, failed: event.message || 'The worker stopped unexpectedly.' });
        };
      }
      at = question;
      const request: RoomRequest = { question, design, meshes: meshes === sent ? null : meshes };
      sent = meshes;
      worker.postMessage(request);
    },
    drop,
  };
}

function tell(heard: Heard, reply: RoomReply, design: Design, more: boolean): void {
  if ('failed' in reply) heard.failed(reply.question, reply.failed, more);
  else heard.answered(reply.question, design, reply.done as never, more);
}

/** @param makeWorker replaced in tests */
export function live(heard: Heard, makeWorker: () => WorkerLike = newRoomWorker): Asker {
  let now: Ask | null = null;
  let next: Ask | null = null;
  let left: Question[] = [];
  const worker = line(makeWorker, (_, reply) => {
    const { design } = now!;
    tell(heard, reply, design, next !== null);
    go();
  });
  const go = () => {
    if (left.length === 0 || next) {
      now = next;
      next = null;
      left = [...(now?.questions ?? [])];
    }
    const question = left.shift();
    if (question) worker.send(question, now!.design, now!.meshes);
  };
  return {
    ask(questions, design, meshes) {
      next = { questions, design, meshes };
      if (!worker.busy) go();
    },
    end() {
      now = next = null;
      left = [];
      worker.drop();
    },
  };
}

/** @param makeWorker replaced in tests */
export function resting(heard: Heard, makeWorker: () => WorkerLike = newRoomWorker, rest = REST): Asker {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let left: Question[] = [];
  let now: Ask | null = null;
  const worker = line(makeWorker, (_, reply) => {
    tell(heard, reply, now!.design, false);
    go();
  });
  const go = () => {
    const question = left.shift();
    if (question) worker.send(question, now!.design, now!.meshes);
  };
  return {
    ask(questions, design, meshes) {
      clearTimeout(timer);
      if (worker.busy) worker.drop();
      now = { questions, design, meshes };
      left = [...questions];
      timer = setTimeout(go, rest);
    },
    end() {
      clearTimeout(timer);
      left = [];
      worker.drop();
    },
  };
}
