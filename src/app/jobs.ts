/** The one long job that may be under way (balancing, laying or writing the shop folder), and what the last balance came to. */
import { create } from 'zustand';
import type { BalanceResult } from '../../geometry';
import type { Design } from '../../shared/design/types';

export type Job = 'balance' | 'lay' | 'shop';

/** `before` is the design that was given. */
export type BalanceOutcome = BalanceResult & { readonly before: Design };

type Jobs = {
  readonly running: Job | null;
  readonly stop: (() => void) | null;
  /** Shown until dismissed, or until the design is another one. */
  readonly balanced: BalanceOutcome | null;
  cancel(): void;
};

export const useJobs = create<Jobs>()((set, get) => ({
  running: null,
  stop: null,
  balanced: null,
  cancel() {
    get().stop?.();
    set({ running: null, stop: null, balanced: null });
  },
}));
