/**
 * Undo and redo. Listens to the document store, so that no edit has to remember to record itself, and keeps designs
 * only (they share what did not change): nothing derived is ever undone. No DOM and no React.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Design } from '../../shared/design/types';
import { type DocumentStore, documents } from './document';

/** `design` is the state to return to; `label` names the edit that lies between. */
export type Step = { readonly design: Design; readonly label: string };
export type HistoryState = { readonly past: readonly Step[]; readonly future: readonly Step[] };

/** Far more steps than anyone walks back; an end, so that a day's dragging does not fill memory. */
const LONGEST_PAST = 1000;

export function createHistory(documents: DocumentStore) {
  const store = createStore<HistoryState>()(() => ({ past: [], future: [] }));

  const stop = documents.store.subscribe((now, before) => {
    if (now.settled === before.settled) return;
    const { cause } = now;
    if (cause.kind === 'open') store.setState({ past: [], future: [] });
    if (cause.kind === 'edit' && before.settled) {
      const step = { design: before.settled, label: cause.label };
      store.setState(({ past }) => ({ past: [...past, step].slice(-LONGEST_PAST), future: [] }));
    }
  });

  return {
    store,
    undo(): boolean {
      const { past, future } = store.getState();
      const step = past.at(-1);
      const { settled } = documents.store.getState();
      if (!step || !settled) return false;
      store.setState({ past: past.slice(0, -1), future: [{ design: settled, label: step.label }, ...future] });
      documents.travel(step.design);
      return true;
    },
    redo(): boolean {
      const { past, future } = store.getState();
      const step = future[0];
      const { settled } = documents.store.getState();
      if (!step || !settled) return false;
      store.setState({ past: [...past, { design: settled, label: step.label }], future: future.slice(1) });
      documents.travel(step.design);
      return true;
    },
    stop,
  };
}

/** The app's one history. */
export const history = createHistory(documents);

export function useHistory<T>(pick: (state: HistoryState) => T): T {
  return useStore(history.store, pick);
}
