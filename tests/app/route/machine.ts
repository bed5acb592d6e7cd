/** A machine for the pool of workers without threads or time: what it was asked is kept, answers come when a test gives them. */
import type { RouteReply, RouteRequest } from '../../../src/app/route/messages';
import type { Machine } from '../../../src/app/route/pool';

type FakeWorker = {
  readonly asked: RouteRequest[];
  ended: boolean;
  onmessage: Worker['onmessage'];
  onerror: Worker['onerror'];
};

export function fakeMachine(cores: number) {
  const workers: FakeWorker[] = [];
  const timers: { readonly act: () => void; readonly at: number; off: boolean }[] = [];
  let clock = 0;
  const machine: Machine = {
    cores,
    makeWorker() {
      const asked: RouteRequest[] = [];
      const worker = {
        asked,
        ended: false,
        onmessage: null,
        onerror: null,
        postMessage: (r: RouteRequest) => void asked.push(r),
        terminate: () => {
          worker.ended = true;
        },
      };
      workers.push(worker);
      return worker as unknown as Worker;
    },
    now: () => clock,
    later(act, ms) {
      const timer = { act, at: clock + ms, off: false };
      timers.push(timer);
      return () => {
        timer.off = true;
      };
    },
  };
  return {
    machine,
    workers,
    /** Numbers of the rounds that worker `k` was given. */
    rounds: (k: number) => workers[k]!.asked.flatMap((r) => (r.do === 'round' ? [r.n] : [])),
    reply: (k: number, data: RouteReply) =>
      workers[k]!.onmessage!.call(null as never, { data } as MessageEvent<RouteReply>),
    breaks: (k: number, message: string) => workers[k]!.onerror!.call(null as never, { message } as ErrorEvent),
    pass(ms: number) {
      clock += ms;
      for (const t of timers)
        if (!t.off && t.at <= clock) {
          t.off = true;
          t.act();
        }
    },
  };
}

export const emptyRound = (n: number, cut = false): RouteReply => ({
  n,
  round: { layouts: [], attempt: null },
  cut,
});
