/**
 * Which page works on which design: one at a time, by the browser's own locks, which end with the page however it ends.
 * A second page waits its turn, or asks for it; the first then keeps what it has and lets go.
 */

/** What the holds tell their page. */
export type HoldEvents = {
  /** Another page asks for the design: resolves once everything of it is kept. */
  asked(id: string): Promise<void>;
  /** The design now belongs to another page. */
  lost(id: string): void;
  /** It is this page's turn. */
  granted(id: string): void;
  /** Another page has kept something of this design. */
  written(id: string): void;
};

export type Holds = {
  /** True once this page has the design; false where another has it, and then `granted` comes when it lets go. */
  take(id: string): Promise<boolean>;
  /** Asks the other page for it, and takes it if that does not answer. */
  takeOver(id: string): void;
  release(id: string): void;
  /** Tells the other pages that something of the design has been kept. */
  tellWritten(id: string): void;
};

type Message = { readonly asks: string } | { readonly wrote: string };

/** A page that has not let go by then hangs, and is passed over, ms. */
export const PATIENCE = 3000;

const nameOf = (id: string) => `evenrun design ${id}`;

export function createHolds(locks: LockManager, channel: BroadcastChannel, events: HoldEvents): Holds {
  const held = new Map<string, () => void>();
  const queued = new Map<string, AbortController>();
  /** When the last lock this page had on each came to its end, which is a moment after it was let go of. */
  const ends = new Map<string, Promise<unknown>>();

  /** Holds until released; a lock that is taken away by force rejects the request instead. */
  const hold = (id: string): Promise<void> => new Promise((release) => held.set(id, () => release()));
  const request = (id: string, options: LockOptions, work: (lock: Lock | null) => Promise<void> | undefined) => {
    let end = () => {};
    const ending = new Promise<void>((resolve) => {
      end = resolve;
    });
    return locks
      .request(nameOf(id), options, (lock) => {
        if (lock) ends.set(id, ending);
        return work(lock);
      })
      .finally(end);
  };
  const ended = (id: string) => () => {
    if (held.delete(id)) events.lost(id);
  };
  const stopWaiting = (id: string) => {
    queued.get(id)?.abort();
    queued.delete(id);
  };
  const wait = (id: string) => {
    if (queued.has(id)) return;
    const stop = new AbortController();
    queued.set(id, stop);
    request(id, { signal: stop.signal }, () => {
      queued.delete(id);
      events.granted(id);
      return hold(id);
    }).catch(ended(id));
  };
  const release = (id: string) => {
    stopWaiting(id);
    const letGo = held.get(id);
    held.delete(id);
    letGo?.();
  };

  channel.onmessage = async ({ data }: MessageEvent<Message>) => {
    if ('wrote' in data) return events.written(data.wrote);
    const id = data.asks;
    if (!held.has(id)) return;
    await events.asked(id);
    release(id);
    events.lost(id);
    wait(id);
  };

  return {
    async take(id) {
      if (held.has(id)) return true;
      // Else a design left and returned to at once would seem to be another page's.
      await ends.get(id);
      return new Promise((resolve, reject) => {
        request(id, { ifAvailable: true }, (lock) => {
          resolve(lock !== null);
          if (lock) return hold(id);
          wait(id);
          return undefined;
        }).catch((error) => {
          reject(error);
          ended(id)();
        });
      });
    },
    takeOver(id) {
      wait(id);
      channel.postMessage({ asks: id } satisfies Message);
      setTimeout(() => {
        if (held.has(id) || !queued.has(id)) return;
        stopWaiting(id);
        request(id, { steal: true }, () => {
          events.granted(id);
          return hold(id);
        }).catch(ended(id));
      }, PATIENCE);
    },
    release,
    tellWritten: (id) => channel.postMessage({ wrote: id } satisfies Message),
  };
}

/** Where the browser has no locks (a page from another machine over plain http) every page has what it opens. */
export const noHolds: Holds = {
  take: async () => true,
  takeOver() {},
  release() {},
  tellWritten() {},
};
