/**
 * What of making is being looked at: which sections of the leaf are open, which piece is meant. Lives in the session: never
 * saved, never undone.
 */
import { create } from 'zustand';
import { whenOpened } from '../document';

export const MAKE_SECTIONS = ['ways', 'tubes', 'stock', 'sum', 'workshop'] as const;
export type MakeSection = (typeof MAKE_SECTIONS)[number];

/** A piece, or the joint behind one, by the piece's id: where it lies is looked up in the newest answer. */
export type Meant = { readonly runner: string; readonly piece: string; readonly joint?: true };

type MakeLook = {
  readonly open: ReadonlySet<MakeSection>;
  /** Drawn in the picture and in its stock. */
  readonly meant: Meant | null;
  /** The bend tables' rows are those from a tube's start, or from its other end. */
  readonly fromEnd: boolean;
  setOpen(section: MakeSection, on: boolean): void;
  set(change: Partial<Pick<MakeLook, 'meant' | 'fromEnd'>>): void;
};

export const useMakeLook = create<MakeLook>()((set) => ({
  open: new Set<MakeSection>(['ways', 'tubes']),
  meant: null,
  fromEnd: false,
  setOpen: (section, on) =>
    set(({ open }) => ({ open: new Set(on ? [...open, section] : [...open].filter((s) => s !== section)) })),
  set: (change) => set(change),
}));

whenOpened(() => useMakeLook.setState({ meant: null }));
