/**
 * What of the room round the header is being looked at: which sections of the leaf are open, what is drawn of them. Lives in
 * the session: never saved, never undone. Small, because the picture reads it before the leaf is loaded.
 */
import { create } from 'zustand';
import { whenOpened } from '../document';

export const SECTIONS = ['gaps', 'motion', 'tools', 'wrap', 'removal', 'sensors'] as const;
export type RoomSection = (typeof SECTIONS)[number];

/** What is shown of a piece coming off: which piece, how far along its path (0 in place, 1 free), whether it moves by itself. */
export type Coming = { readonly piece: number; readonly along: number; readonly playing: boolean };

/** How the header is moved in the picture, to be looked at: degrees about the axis it rolls about, heat from 0 to 1. */
export type Posed = { readonly roll: number; readonly heat: number };

type RoomLook = {
  readonly open: ReadonlySet<RoomSection>;
  /** Tubes in the colour of the room round them, in place of their own. */
  readonly tinted: boolean;
  readonly wrapDrawn: boolean;
  /** The gap pointed at in the list, by key. */
  readonly pointedGap: string | null;
  /** The place whose tool is drawn, by the id of its entry, and which of its tools; null: the best. */
  readonly entry: string | null;
  readonly tool: number | null;
  readonly coming: Coming | null;
  readonly posed: Posed | null;
  setOpen(section: RoomSection, on: boolean): void;
  set(change: Partial<Pick<RoomLook, 'tinted' | 'wrapDrawn' | 'pointedGap' | 'coming' | 'posed'>>): void;
  /** Draws the tool of one place; null: of none. */
  showTool(entry: string | null, tool?: number | null): void;
};

const PLAIN = { pointedGap: null, entry: null, tool: null, coming: null, posed: null };

export const useRoomLook = create<RoomLook>()((set) => ({
  open: new Set<RoomSection>(['gaps']),
  tinted: false,
  wrapDrawn: false,
  ...PLAIN,
  setOpen: (section, on) =>
    set(({ open }) => ({
      open: new Set(on ? [...open, section] : [...open].filter((s) => s !== section)),
      // What was drawn for a section goes with it.
      ...(!on && section === 'tools' && { entry: null, tool: null }),
      ...(!on && section === 'removal' && { coming: null }),
      ...(!on && section === 'motion' && { posed: null }),
    })),
  set: (change) => set(change),
  showTool: (entry, tool = null) => set({ entry, tool }),
}));

whenOpened(() => useRoomLook.setState({ ...PLAIN, tinted: false }));
