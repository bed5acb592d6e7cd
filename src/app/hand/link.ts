/**
 * The page's end of the worker behind a hand. While an ask is being answered, later asks replace each other, so a drag is
 * answered as fast as the machine can and never falls behind. Where there are no workers, answers come at once.
 */
import { type Answer, type Follower, follower, type Held, type Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { HandReply, HandRequest } from './messages';

export type Link = {
  ask(asked: Design): void;
  /** Whether an ask is still without an answer. */
  readonly waiting: boolean;
  /** Answers that come later are nobody's. */
  end(): void;
};

type Listener = { answered(answer: Answer, spent: number): void; failed(why: string): void };

let worker: Worker | null = null;
let sent: Meshes | null = null;
let hands = 0;

function theWorker(): Worker {
  if (!worker) {
    worker = new Worker(new URL('./hand.worker.ts', import.meta.url), { type: 'module', name: 'hand' });
    sent = null;
  }
  return worker;
}

export function linkHand(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  return typeof Worker === 'undefined' ? inPlace(from, meshes, held, on) : inWorker(from, meshes, held, on);
}

function inWorker(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  const hand = ++hands;
  const own = theWorker();
  let busy = false;
  let next: Design | null = null;
  const post = (request: HandRequest) => own.postMessage(request);
  post({ do: 'hold', hand, from, held, meshes: meshes === sent ? null : meshes });
  sent = meshes;
  const send = (asked: Design) => {
    busy = true;
    post({ do: 'ask', hand, asked });
  };
  const done = () => {
    busy = false;
    const asked = next;
    next = null;
    if (asked) send(asked);
  };
  const hear = ({ data }: MessageEvent<HandReply>) => {
    if (data.hand !== hand) return;
    done();
    if ('answer' in data) on.answered(data.answer, data.spent);
    else on.failed(data.failed);
  };
  const broke = (event: ErrorEvent) => {
    // A worker that threw outside a request may be unusable: the next hand starts another.
    own.terminate();
    if (worker === own) worker = null;
    busy = false;
    next = null;
    on.failed(event.message || 'The worker stopped unexpectedly.');
  };
  own.addEventListener('message', hear);
  own.addEventListener('error', broke);
  return {
    ask(asked) {
      if (busy) next = asked;
      else send(asked);
    },
    get waiting() {
      return busy;
    },
    end() {
      own.removeEventListener('message', hear);
      own.removeEventListener('error', broke);
    },
  };
}

function inPlace(from: Design, meshes: Meshes, held: Held, on: Listener): Link {
  let follows: Follower | null = null;
  let ended = false;
  return {
    ask(asked) {
      if (ended) return;
      const began = performance.now();
      follows ??= follower(from, meshes, held);
      on.answered(follows.ask(asked), performance.now() - began);
    },
    waiting: false,
    end() {
      ended = true;
    },
  };
}
