/**
 * What the rounds have come to, whatever order they arrive in: they are gathered by number. Which layouts are told apart
 * depends on which came first, so only that makes the same rounds the same answer on any machine.
 */
import { gathered, type Harvest, type Layout, nothingYet, type Round } from '../../../geometry';

export type Gathering = {
  /** The next round that nobody has done or is doing; null where there is none below `limit`. */
  handOut(limit: number | null): number | null;
  /** A layout that round `n` found on its way. */
  see(n: number, layout: Layout): void;
  /** @param cut the round was ended early: what it has counts, and it is handed out again */
  take(n: number, round: Round, cut: boolean): void;
  /** Rounds under way were broken off: what was seen of them stays, and they are handed out again. */
  recall(): void;
  harvest(): Harvest;
  /** Rounds done. */
  readonly rounds: number;
};

const NOTHING: Round = { layouts: [], attempt: null };

export function createGathering(): Gathering {
  /** Of all rounds below `next`, which are done. */
  let before: Harvest = nothingYet;
  let next = 0;
  /** Of rounds from `next` on: those done, and what is known of those that are not. */
  const done = new Map<number, Round>();
  const partly = new Map<number, Round>();
  const out = new Set<number>();

  return {
    handOut(limit) {
      for (let n = next; limit === null || n < limit; n++) {
        if (done.has(n) || out.has(n)) continue;
        out.add(n);
        return n;
      }
      return null;
    },
    see(n, layout) {
      if (n < next || done.has(n)) return;
      const { layouts, attempt } = partly.get(n) ?? NOTHING;
      partly.set(n, { layouts: [...layouts, layout], attempt });
    },
    take(n, round, cut) {
      out.delete(n);
      if (n < next || done.has(n)) return;
      if (cut) {
        partly.set(n, round);
        return;
      }
      partly.delete(n);
      done.set(n, round);
      for (let whole = done.get(next); whole; whole = done.get(next)) {
        before = gathered(before, whole);
        done.delete(next);
        next += 1;
      }
    },
    recall() {
      out.clear();
    },
    harvest() {
      const rest = [...done, ...partly].sort(([a], [b]) => a - b);
      return rest.reduce((harvest, [, round]) => gathered(harvest, round), before);
    },
    get rounds() {
      return next + done.size;
    },
  };
}
