/**
 * The design being worked on: source data only. Two values are kept apart: `design` is what is drawn, and moves freely
 * during a gesture; `settled` is what the user has decided, and is what history, saving and long jobs see.
 * A gesture is mark → write freely from the snapshot taken at its start → commit as one undo step, or bail to the mark.
 */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Meshes } from '../../geometry';
import type { Design } from '../../shared/design/types';
import { freshId } from './freshId';
import { sameDesign } from './sameDesign';

/** Why `settled` last changed; history reads it. */
export type Cause =
  | { readonly kind: 'open' }
  | { readonly kind: 'edit'; readonly label: string }
  | { readonly kind: 'travel' };

export type DocumentState = {
  /** Tells this design from others kept in this browser. Changes with every `open`, unless that names one. */
  readonly id: string;
  readonly design: Design | null;
  readonly settled: Design | null;
  /** `settled` as it was last opened or saved; null where no file ever held it. */
  readonly saved: Design | null;
  readonly fileName: string;
  /** Mesh surroundings by file name, as triangles. Read beside the design, never undone. */
  readonly meshes: Meshes;
  readonly cause: Cause;
  /** The gesture under way, by number, so that a handle of an ended one can tell. */
  readonly gesture: number | null;
  /** Another tab works on this design: nothing is changed here. */
  readonly readOnly: boolean;
  /** How often an edit was refused because of that, for whoever says so. */
  readonly refusals: number;
};

/** A handle on one gesture. Once it has ended, by whatever way, its calls do nothing and answer false. */
export type Gesture = {
  /** The design at the mark: write from this, not from what was written last, so that errors do not add up. */
  readonly from: Design;
  write(next: Design): boolean;
  commit(label: string): boolean;
  bail(): boolean;
};

export type Opening = {
  /** A design that is kept in this browser already. Default: a new one. */
  readonly id?: string;
  /** What its file holds. Default: the design itself. */
  readonly saved?: Design | null;
  readonly readOnly?: boolean;
};

const NO_MESHES: Meshes = new Map();

export function createDocumentStore() {
  const store = createStore<DocumentState>()(() => ({
    id: freshId(),
    design: null,
    settled: null,
    saved: null,
    fileName: 'untitled.evenrun.json',
    meshes: NO_MESHES,
    cause: { kind: 'open' },
    gesture: null,
    readOnly: false,
    refusals: 0,
  }));
  let gestures = 0;

  const settle = (design: Design, cause: Cause) => store.setState({ design, settled: design, cause, gesture: null });

  /** True where nothing may be changed, having counted it. */
  const refuse = (): boolean => {
    const { readOnly } = store.getState();
    if (readOnly) store.setState(({ refusals }) => ({ refusals: refusals + 1 }));
    return readOnly;
  };

  const bail = (): boolean => {
    const { gesture, settled } = store.getState();
    if (gesture === null) return false;
    store.setState({ design: settled, gesture: null });
    return true;
  };

  return {
    store,

    /** Replaces the document. History begins anew, except for a design that it still remembers. */
    open(design: Design, fileName: string, meshes: Meshes = NO_MESHES, opening: Opening = {}): void {
      store.setState({
        id: opening.id ?? freshId(),
        design,
        settled: design,
        saved: opening.saved === undefined ? design : opening.saved,
        fileName,
        meshes,
        cause: { kind: 'open' },
        gesture: null,
        readOnly: opening.readOnly ?? false,
      });
    },

    /**
     * One edit, one undo step; none where nothing would be written differently. A gesture under way is given up first:
     * its half-made state is nobody's decision. False where the document may not be changed.
     */
    apply(next: Design, label: string): boolean {
      if (refuse()) return false;
      bail();
      const { settled } = store.getState();
      if (!settled || !sameDesign(next, settled)) settle(next, { kind: 'edit', label });
      return true;
    },

    /** Undo, redo and jumps: settles a design that history kept. False where the document may not be changed. */
    travel(to: Design): boolean {
      if (refuse()) return false;
      settle(to, { kind: 'travel' });
      return true;
    },

    /** Starts a gesture, ending any other. Null where there is no design, or it may not be changed. */
    mark(): Gesture | null {
      const from = store.getState().settled;
      if (!from || refuse()) return null;
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
          if (design && !sameDesign(design, from)) settle(design, { kind: 'edit', label });
          else bail();
          return true;
        },
        bail: () => live() && bail(),
      };
    },

    /** Ends the gesture under way without trace. False where there was none. */
    bail,

    /** Whether another tab works on this design. A gesture under way is given up. */
    setReadOnly(readOnly: boolean): void {
      bail();
      store.setState({ readOnly });
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

/** Calls back when a design comes up that was not there: opened, made or returned to. */
export function whenOpened(act: () => void): void {
  documents.store.subscribe((now, before) => {
    if (now.settled !== before.settled && now.cause.kind === 'open') act();
  });
}

export function useDocument<T>(pick: (state: DocumentState) => T): T {
  return useStore(documents.store, pick);
}

/** Whether there are edits that no file holds. */
export const isDirty = (state: DocumentState): boolean => state.settled !== state.saved;
