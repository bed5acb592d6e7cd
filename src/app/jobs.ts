/** The one long job that may be under way (balancing, laying or writing the shop folder), and what the last balance came to. */
import { create } from 'zustand';
import type { BalanceResult } from '../../geometry';
import type { Design } from '../../shared/design/types';

export type Job = 'balance' | 'lay' | 'shop';

/** `before` is the design that was given. */
export type BalanceOutcome = BalanceResult & { readonly before: Design };

/** Below this nothing is said to have moved, mm. */
const STIRRED = 0.0005;

export const movedBy = ({ moved }: BalanceOutcome): BalanceOutcome['moved'] =>
  moved.filter((m) => m.distance >= STIRRED);

/** Whether it still says something about the design: what balance made of it, or left as it was. */
export const isAbout = (outcome: BalanceOutcome, settled: Design | null): boolean =>
  settled === outcome.design || (movedBy(outcome).length === 0 && settled === outcome.before);

type Jobs = {
  readonly running: Job | null;
  readonly stop: (() => void) | null;
  /** What of it is being done now, in a word or two; null where it does not say. */
  readonly doing: string | null;
  /** Shown until dismissed, or until the design is another one. */
  readonly balanced: BalanceOutcome | null;
  cancel(): void;
};

export const useJobs = create<Jobs>()((set, get) => ({
  running: null,
  stop: null,
  doing: null,
  balanced: null,
  cancel() {
    get().stop?.();
    set({ running: null, stop: null, doing: null, balanced: null });
  },
}));
