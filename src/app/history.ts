/**
 * Undo, redo and jumps through every step. Listens to the document store, so that no edit has to remember to record
 * itself, and keeps designs only: nothing derived is ever undone. Steps are never merged. No DOM and no React.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Design } from '../../shared/design/types';
import { type DocumentStore, documents } from './document';

/** `design` is the state to return to; `label` names the edit that lies between, `at` is when it was made (ms, epoch). */
export type Step = { readonly design: Design; readonly label: string; readonly at: number };

export type HistoryState = {
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** Steps that fell off the far end. */
  readonly dropped: number;
};

/**
 * Far more steps than a day's work makes; an end all the same, so that memory has one. Designs share what an edit left
 * alone, so that a step costs what it changed: a few hundred bytes for a number, some kilobytes where every runner moved.
 */
export const LONGEST_PAST = 5000;

/** What the state that history begins with is called. */
export const firstLabel = (dropped: number): string => (dropped > 0 ? 'As it was here' : 'As opened');

const NOTHING: HistoryState = { past: [], future: [], dropped: 0 };

export function createHistory(documents: DocumentStore, now: () => number = Date.now) {
  const store = createStore<HistoryState>()(() => NOTHING);
  /** Designs that were left for another in this session, by id, with the state each was left in. */
  const left = new Map<string, { readonly at: Design; readonly steps: HistoryState }>();

  const stop = documents.store.subscribe((next, before) => {
    const opened = next.cause.kind === 'open' && next.cause !== before.cause;
    if (!opened && next.settled === before.settled) return;
    if (opened) {
      if (before.settled) left.set(before.id, { at: before.settled, steps: store.getState() });
      const kept = left.get(next.id);
      // Only what leads to the very state that is opened: another tab may have gone on with it meanwhile.
      store.setState(kept && kept.at === next.settled ? kept.steps : NOTHING);
    }
    if (next.cause.kind === 'edit' && before.settled) {
      const step = { design: before.settled, label: next.cause.label, at: now() };
      store.setState(({ past, dropped }) => {
        const over = Math.max(0, past.length + 1 - LONGEST_PAST);
        return { past: [...past.slice(over), step], future: [], dropped: dropped + over };
      });
    }
  });

  /** Goes to the state after `k` of the steps that are kept; 0 is the first. False where that is here or nowhere. */
  const go = (k: number): boolean => {
    const { past, future } = store.getState();
    const here = documents.store.getState().settled;
    if (!here || k === past.length || !(Number.isInteger(k) && k >= 0 && k <= past.length + future.length))
      return false;
    const steps = [...past, ...future];
    const states = [...past.map((s) => s.design), here, ...future.map((s) => s.design)];
    if (!documents.travel(states[k]!)) return false;
    store.setState({
      past: steps.slice(0, k).map((step, i) => leadingTo(states[i]!, step)),
      future: steps.slice(k).map((step, i) => leadingTo(states[k + i + 1]!, step)),
    });
    return true;
  };

  return {
    store,
    /** One step back; during a gesture, out of that gesture alone. */
    undo: (): boolean => documents.bail() || go(store.getState().past.length - 1),
    /** One step forth; during a gesture, out of that gesture alone. */
    redo: (): boolean => documents.bail() || go(store.getState().past.length + 1),
    /** To the state after the first `k` steps, giving up a gesture under way. False where that is here or nowhere. */
    jump(k: number): boolean {
      documents.bail();
      return go(k);
    },
    stop,
  };
}

const leadingTo = (design: Design, step: Step): Step => (step.design === design ? step : { ...step, design });

/** The app's one history. */
export const history = createHistory(documents);

export function useHistory<T>(pick: (state: HistoryState) => T): T {
  return useStore(history.store, pick);
}
