/** What the page shows of the designs kept in this browser. Filled by shelf.ts; never part of a document. */
import { create } from 'zustand';
import type { Removed } from '../storage/kept';
import type { KeptDesign, KeptVersion } from '../storage/keptDesign';
import type { Trouble } from '../storage/trouble';

export type ShelfState = {
  /** The last changed first; the one that is open among them. */
  readonly designs: readonly KeptDesign[];
  /** Of the design that is open, the newest first. */
  readonly versions: readonly KeptVersion[];
  /** What was deleted last, until something else is or the page ends. */
  readonly removed: Removed | null;
  /** Why edits are not kept just now; null while they are. */
  readonly trouble: Trouble | null;
};

export const createShelfState = () =>
  create<ShelfState>()(() => ({ designs: [], versions: [], removed: null, trouble: null }));

export type ShelfStore = ReturnType<typeof createShelfState>;
