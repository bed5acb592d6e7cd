/**
 * Pages of one browser without a browser: locks and a channel as the web's standards have them, shared by every page, and
 * timers that run when the test says so.
 */
import { createDocumentStore } from '../../../src/app/document';
import { createHolds, type HoldEvents } from '../../../src/app/shelf/holds';
import { createShelf } from '../../../src/app/shelf/shelf';
import { createShelfState } from '../../../src/app/shelf/shelfState';
import { type Backend, memoryBackend } from '../../../src/app/storage/backend';
import { createKept } from '../../../src/app/storage/kept';

type Options = { readonly ifAvailable?: boolean; readonly steal?: boolean; readonly signal?: AbortSignal };
type Work = (lock: object | null) => unknown;
type Waiting = { readonly work: Work; resolve(value: unknown): void; reject(error: unknown): void };

/** Exclusive locks by name, after the Web Locks standard (W3C): queued in order, `steal` breaks what is held. */
function fakeLocks(): LockManager {
  const held = new Map<string, Waiting>();
  const queues = new Map<string, Waiting[]>();
  const grant = (name: string, waiting: Waiting) => {
    held.set(name, waiting);
    Promise.resolve(waiting.work({}))
      .then(waiting.resolve, waiting.reject)
      .finally(() => {
        if (held.get(name) !== waiting) return;
        held.delete(name);
        const next = queues.get(name)?.shift();
        if (next) grant(name, next);
      });
  };
  const request = (name: string, options: Options, work: Work) =>
    new Promise((resolve, reject) => {
      const waiting: Waiting = { work, resolve, reject };
      if (options.steal) {
        held.get(name)?.reject(new DOMException('stolen', 'AbortError'));
        grant(name, waiting);
      } else if (!held.has(name)) grant(name, waiting);
      else if (options.ifAvailable) resolve(work(null));
      else {
        const queue = queues.get(name) ?? [];
        queues.set(name, [...queue, waiting]);
        options.signal?.addEventListener('abort', () => {
          queues.set(
            name,
            (queues.get(name) ?? []).filter((w) => w !== waiting),
          );
          reject(new DOMException('given up', 'AbortError'));
        });
      }
    });
  return { request } as unknown as LockManager;
}

/** What one page posts reaches all others, a moment later. */
function fakeChannels() {
  const all: BroadcastChannel[] = [];
  return (): BroadcastChannel => {
    const mine = {
      onmessage: null,
      postMessage(data: unknown) {
        for (const other of all)
          if (other !== mine) queueMicrotask(() => other.onmessage?.call(other, { data } as MessageEvent));
      },
    } as unknown as BroadcastChannel;
    all.push(mine);
    return mine;
  };
}

/** Of a page that hangs. */
const deafChannel = () => ({ onmessage: null, postMessage() {} }) as unknown as BroadcastChannel;

type Timers = { readonly later: (work: () => void, ms: number) => () => void; run(upTo: number): void };

function fakeTimers(): Timers {
  let timers: { readonly work: () => void; readonly ms: number }[] = [];
  return {
    later(work, ms) {
      const timer = { work, ms };
      timers.push(timer);
      return () => {
        timers = timers.filter((t) => t !== timer);
      };
    },
    /** All that were set for so long or less. */
    run(upTo) {
      const due = timers.filter((t) => t.ms <= upTo);
      timers = timers.filter((t) => t.ms > upTo);
      for (const { work } of due) work();
    },
  };
}

/** A browser: what its pages share. */
export function fakeBrowser(backend: Backend = memoryBackend()) {
  const [locks, channel] = [fakeLocks(), fakeChannels()];
  let clock = 0;
  /** @param hung a page that hears and says nothing, as one that a long script keeps busy */
  const openPage = ({ hung = false } = {}) => {
    const timers = fakeTimers();
    const documents = createDocumentStore();
    const state = createShelfState();
    const kept = createKept(backend);
    const tooLarge: string[] = [];
    const shelf = createShelf({
      documents,
      kept,
      state,
      holds: (events: HoldEvents) => createHolds(locks, hung ? deafChannel() : channel(), events),
      now: () => ++clock,
      later: timers.later,
      remember() {},
      tooLarge: (file) => tooLarge.push(file),
    });
    return { documents, state, kept, shelf, timers, tooLarge, now: () => documents.store.getState() };
  };
  return { openPage, backend };
}
