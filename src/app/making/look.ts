/**
 * What of making is being looked at: which sections of the leaf are open, which piece is pointed at. Lives in the session: never
 * saved, never undone. Small, because the picture reads it before the leaf is loaded.
 */
import { create } from 'zustand';
import { whenOpened } from '../document';

export const MAKE_SECTIONS = ['ways', 'tubes', 'stock', 'sum', 'workshop'] as const;
export type MakeSection = (typeof MAKE_SECTIONS)[number];

/** A stretch of a runner's centerline, mm from its start: a piece, or a joint where both are alike. */
export type Stretch = { readonly runner: string; readonly piece: string; readonly from: number; readonly to: number };

type MakeLook = {
  readonly open: ReadonlySet<MakeSection>;
  /** Drawn in the picture and on the rack. */
  readonly stretch: Stretch | null;
  /** The bend tables' rows are those from a tube's start, or from its other end. */
  readonly fromEnd: boolean;
  setOpen(section: MakeSection, on: boolean): void;
  set(change: Partial<Pick<MakeLook, 'stretch' | 'fromEnd'>>): void;
};

export const useMakeLook = create<MakeLook>()((set) => ({
  open: new Set<MakeSection>(['ways', 'tubes']),
  stretch: null,
  fromEnd: false,
  setOpen: (section, on) =>
    set(({ open }) => ({ open: new Set(on ? [...open, section] : [...open].filter((s) => s !== section)) })),
  set: (change) => set(change),
}));

whenOpened(() => useMakeLook.setState({ stretch: null }));
