/** What the user is looking at: never saved, never undone. The document lives in `document.ts`. */
import { create } from 'zustand';
import type { Vec3 } from '../../shared/vec3';
import { whenOpened } from './document';
import { sameRef } from './sameRef';

/** One thing of the design. `bend` counts from 0 among a runner's bends (continuous bends are one), `straight` likewise. */
export type Ref =
  | { readonly kind: 'runner'; readonly id: string; readonly bend?: number; readonly straight?: number }
  /** One bolt or stud of the flange `id`, counted from 0. */
  | { readonly kind: 'fastener'; readonly id: string; readonly index: number }
  | {
      readonly kind: 'port' | 'flange' | 'merge' | 'surrounding' | 'service' | 'sensor' | 'group' | 'tube' | 'tooling';
      readonly id: string;
    }
  /** What there is one of; `id` is empty. */
  | { readonly kind: 'engine' | 'design'; readonly id: '' };

export type ViewPreset = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom' | 'corner';

/** What is pointed at; a gap is pointed at with what it lies beside. */
export type Pointed = Ref & { readonly beside?: Ref };

/** A wish for the camera; the viewport answers each new object once. */
export type CameraWish =
  | { readonly kind: 'fit' }
  | { readonly kind: 'preset'; readonly preset: ViewPreset }
  | { readonly kind: 'look'; readonly at: Vec3; readonly radius: number };

type Session = {
  /** The last one picked; what panels for one thing show. */
  readonly selected: Ref | null;
  /** All that is picked, in the order of picking; `selected` is its last. */
  readonly selection: readonly Ref[];
  readonly hovered: Pointed | null;
  readonly wish: CameraWish;
  /** A point to mark in the 3D view: the place of the problem being looked at. */
  readonly mark: Vec3 | null;
  /** Picks this one alone, or nothing. */
  select(ref: Ref | null): void;
  /** Adds to what is picked, or takes out of it. */
  toggle(ref: Ref): void;
  selectAll(refs: readonly Ref[]): void;
  hover(ref: Pointed | null): void;
  ask(wish: CameraWish): void;
  setMark(at: Vec3 | null): void;
};

export const useSession = create<Session>()((set, get) => ({
  selected: null,
  selection: [],
  hovered: null,
  wish: { kind: 'fit' },
  mark: null,
  // A pin belongs to the problem that was looked at; whoever selects and marks, marks after.
  select: (selected) => set({ selected, selection: selected ? [selected] : [], mark: null }),
  toggle: (ref) => {
    const others = get().selection.filter((r) => !sameRef(r, ref));
    get().selectAll(others.length < get().selection.length ? others : [...others, ref]);
  },
  selectAll: (selection) => set({ selection, selected: selection.at(-1) ?? null, mark: null }),
  hover: (hovered) => set({ hovered }),
  ask: (wish) => set({ wish }),
  setMark: (mark) => set({ mark }),
}));

/** Another design comes up: nothing of the one before is picked, pointed at or marked. */
whenOpened(() => useSession.setState({ selected: null, selection: [], hovered: null, mark: null }));
