/**
 * The design being worked on: source data only. Two values are kept apart: `design` is what is drawn, and moves freely
 * during a gesture; `settled` is what the user has decided, and is what history, saving and long jobs see.
 * A gesture is mark → write freely from the snapshot taken at its start → commit as one undo step, or bail to the mark.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Meshes } from '../../geometry';
import type { Design } from '../../shared/design/types';

/** Why `settled` last changed; history reads it. */
export type Cause =
  | { readonly kind: 'open' }
  | { readonly kind: 'edit'; readonly label: string }
  | { readonly kind: 'travel' };

export type DocumentState = {
  readonly design: Design | null;
  readonly settled: Design | null;
  /** `settled` as it was last opened or saved. */
  readonly saved: Design | null;
  readonly fileName: string;
  /** Mesh surroundings by file name, as triangles. Read beside the design, never undone. */
  readonly meshes: Meshes;
  readonly cause: Cause;
  /** The gesture under way, by number, so that a handle of an ended one can tell. */
  readonly gesture: number | null;
};

/** A handle on one gesture. Once it has ended, by whatever way, its calls do nothing and answer false. */
export type Gesture = {
  /** The design at the mark: write from this, not from what was written last, so that errors do not add up. */
  readonly from: Design;
  write(next: Design): boolean;
  commit(label: string): boolean;
  bail(): boolean;
};

const NO_MESHES: Meshes = new Map();

export function createDocumentStore() {
  const store = createStore<DocumentState>()(() => ({
    design: null,
    settled: null,
    saved: null,
    fileName: 'untitled.evenrun.json',
    meshes: NO_MESHES,
    cause: { kind: 'open' },
    gesture: null,
  }));
  let gestures = 0;

  const settle = (design: Design, cause: Cause) => store.setState({ design, settled: design, cause, gesture: null });

  return {
    store,

    /** Replaces the document and forgets its past. */
    open(design: Design, fileName: string, meshes: Meshes = NO_MESHES): void {
      store.setState({
        design,
        settled: design,
        saved: design,
        fileName,
        meshes,
        cause: { kind: 'open' },
        gesture: null,
      });
    },

    /** One edit, one undo step. A gesture under way is given up first: its half-made state is nobody's decision. */
    apply(next: Design, label: string): void {
      if (next === store.getState().settled) return;
      settle(next, { kind: 'edit', label });
    },

    /** Undo and redo: settles a design that history kept. */
    travel(to: Design): void {
      settle(to, { kind: 'travel' });
    },

    /** Starts a gesture, ending any other. Null where there is no design. */
    mark(): Gesture | null {
      const from = store.getState().settled;
      if (!from) return null;
      const id = ++gestures;
      store.setState({ design: from, gesture: id });
      const live = () => store.getState().gesture === id;
      return {
        from,
        write(next) {
          if (!live()) return false;
          store.setState({ design: next });
          return true;
        },
        commit(label) {
          if (!live()) return false;
          const { design } = store.getState();
          if (design && design !== from) settle(design, { kind: 'edit', label });
          else store.setState({ gesture: null });
          return true;
        },
        bail() {
          if (!live()) return false;
          store.setState({ design: from, gesture: null });
          return true;
        },
      };
    },

    /** Adds mesh files read later than the design. */
    addMeshes(more: Meshes): void {
      store.setState(({ meshes }) => ({ meshes: new Map([...meshes, ...more]) }));
    },

    /** Remembers that `design` now lies on disk. */
    markSaved(design: Design, fileName: string): void {
      store.setState({ saved: design, fileName });
    },
  };
}

export type DocumentStore = ReturnType<typeof createDocumentStore>;

/** The app's one document. */
export const documents = createDocumentStore();

export function useDocument<T>(pick: (state: DocumentState) => T): T {
  return useStore(documents.store, pick);
}

/** Whether there are edits that no file holds. */
export const isDirty = (state: DocumentState): boolean => state.settled !== state.saved;
