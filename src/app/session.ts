/** What the user is looking at: never saved, never undone. The document lives in `document.ts`. */
import { create } from 'zustand';
import type { Vec3 } from '../../shared/vec3';

/** One thing of the design. `bend` counts from 0 among a runner's bends (continuous bends are one), `straight` likewise. */
export type Ref =
  | { readonly kind: 'runner'; readonly id: string; readonly bend?: number; readonly straight?: number }
  | { readonly kind: 'port' | 'flange' | 'merge' | 'surrounding' | 'group'; readonly id: string };

export type ViewPreset = 'front' | 'back' | 'left' | 'right' | 'top' | 'bottom' | 'corner';

/** A wish for the camera; the viewport answers each new object once. */
export type CameraWish =
  | { readonly kind: 'fit' }
  | { readonly kind: 'preset'; readonly preset: ViewPreset }
  | { readonly kind: 'look'; readonly at: Vec3; readonly radius: number };

type Session = {
  readonly selected: Ref | null;
  readonly hovered: Ref | null;
  readonly wish: CameraWish;
  /** A point to mark in the 3D view: the place of the problem being looked at. */
  readonly mark: Vec3 | null;
  select(ref: Ref | null): void;
  hover(ref: Ref | null): void;
  ask(wish: CameraWish): void;
  setMark(at: Vec3 | null): void;
};

export const useSession = create<Session>()((set) => ({
  selected: null,
  hovered: null,
  wish: { kind: 'fit' },
  mark: null,
  // A pin belongs to the problem that was looked at; whoever selects and marks, marks after.
  select: (selected) => set({ selected, mark: null }),
  hover: (hovered) => set({ hovered }),
  ask: (wish) => set({ wish }),
  setMark: (mark) => set({ mark }),
}));
