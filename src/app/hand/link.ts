/**
 * The page's end of the worker behind a hand. While an ask is being answered, later asks replace each other, so a drag is
 * answered as fast as the machine can and never falls behind; once the hand rests, an answer that can be bettered is.
 * Where there are no workers, the solver is loaded and answers here.
 */
import type { Answer, Held, Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { packing } from '../meshes/packed';
import type { HandReply, HandRequest } from './messages';
import { onceDrawn } from './onceDrawn';

export type Link = {
  ask(asked: Design): void;
  /** Whether an ask is still without an answer. */
  readonly waiting: boolean;
  /** Answers that come later are nobody's. */
  end(): void;
};

export type Listener = { answered(answer: Answer, spent: number): void; failed(why: string): void };

let worker: Worker | null = null;
let sent: Meshes | null = null;
let hands = 0;

function theWorker(): Worker {
  if (!worker) {
    worker = packing(new Worker(new URL('./hand.worker.ts', import.meta.url), { type: 'module', name: 'hand' }));
    sent = null;
  }
  return worker;
}

/** Readies the worker for a hand that is likely to come. Does nothing where it is there already, or there are no workers. */
export function readyHand(design: Design, meshes: Meshes): void {
  if (typeof Worker === 'undefined' || worker) return;
  const request: HandRequest = { do: 'practise', design, meshes };
  theWorker().postMessage(request);
  sent = meshes;
}

export function linkHand(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  return typeof Worker === 'undefined' ? onThisThread(from, meshes, held, on) : inWorker(from, meshes, held, on);
}

function inWorker(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  const hand = ++hands;
  const own = theWorker();
  let busy = false;
  let next: Design | null = null;
  /** Lets go of bettering the last answer, which is due once that was seen and nothing new was asked. */
  let rest: (() => void) | null = null;
  const post = (request: HandRequest) => own.postMessage(request);
  post({ do: 'hold', hand, from, held, meshes: meshes === sent ? null : meshes });
  sent = meshes;
  const send = (request: HandRequest) => {
    wake();
    busy = true;
    post(request);
  };
  const wake = () => {
    rest?.();
    rest = null;
  };
  const done = (more: boolean) => {
    busy = false;
    const asked = next;
    next = null;
    if (asked) send({ do: 'ask', hand, asked });
    else if (more) rest = onceDrawn(() => send({ do: 'further', hand }));
  };
  const hear = ({ data }: MessageEvent<HandReply>) => {
    if (data.hand !== hand) return;
    done('answer' in data && data.answer.more);
    if ('answer' in data) on.answered(data.answer, data.spent);
    else on.failed(data.failed);
  };
  const broke = (event: ErrorEvent) => {
    // A worker that threw outside a request may be unusable: the next hand starts another.
    own.terminate();
    if (worker === own) worker = null;
    busy = false;
    next = null;
    wake();
    on.failed(event.message || 'The worker stopped unexpectedly.');
  };
  own.addEventListener('message', hear);
  own.addEventListener('error', broke);
  return {
    ask(asked) {
      if (busy) next = asked;
      else send({ do: 'ask', hand, asked });
    },
    get waiting() {
      return busy || rest !== null;
    },
    end() {
      wake();
      own.removeEventListener('message', hear);
      own.removeEventListener('error', broke);
    },
  };
}

/** The solver is most of the kernel: it is fetched only where it has to run on the page's own thread. */
let inPlace: typeof import('./inPlace').inPlace | null = null;
export async function loadInPlace(): Promise<void> {
  ({ inPlace } = await import('./inPlace'));
}

function onThisThread(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  if (inPlace) return inPlace(from, meshes, held, on);
  let link: Link | null = null;
  let asked: Design | null = null;
  let ended = false;
  loadInPlace().then(
    () => {
      if (ended) return;
      link = inPlace!(from, meshes, held, on);
      if (asked) link.ask(asked);
    },
    (error) => !ended && on.failed(error instanceof Error ? error.message : String(error)),
  );
  return {
    ask(design) {
      asked = design;
      link?.ask(design);
    },
    get waiting() {
      return link === null && asked !== null && !ended;
    },
    end() {
      ended = true;
      link?.end();
    },
  };
}
