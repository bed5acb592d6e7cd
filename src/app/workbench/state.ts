/**
 * Whether the page is at the workbench. Kept for as long as the tab lives, because a phone lets go of pages that are put aside,
 * and whoever comes back with a piece in hand must find the step.
 */
import { create } from 'zustand';

const KEY = 'evenrun.workbench';

type BenchState = {
  readonly open: boolean;
  /** The runner whose steps are shown; `header` for those of all; null: not chosen yet. */
  readonly of: string | null;
  /** The step on screen, by id. */
  readonly step: string | null;
};

const CLOSED: BenchState = { open: false, of: null, step: null };

export const useBench = create<BenchState>()(() => remembered());

export const openBench = (): void => useBench.setState({ open: true });
export const closeBench = (): void => useBench.setState({ open: false });

useBench.subscribe((state) => {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(state));
  } catch {
    // Refused: a page that is loaded again begins where it always does.
  }
});

function remembered(): BenchState {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEY) ?? 'null') as Partial<BenchState> | null;
    if (!kept) return CLOSED;
    const text = (value: unknown) => (typeof value === 'string' ? value : null);
    return { open: kept.open === true, of: text(kept.of), step: text(kept.step) };
  } catch {
    return CLOSED;
  }
}
