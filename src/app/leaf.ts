/** Which leaf of the side column lies on top. Lives in the session: never saved, never undone. */
import { create } from 'zustand';

export const LEAVES = [
  { key: 'numbers', name: 'Numbers' },
  { key: 'room', name: 'Room' },
  { key: 'parts', name: 'Parts' },
  { key: 'make', name: 'Make' },
  { key: 'edit', name: 'Edit' },
  { key: 'past', name: 'Past' },
] as const;

export type Leaf = (typeof LEAVES)[number]['key'];

type LeafState = {
  readonly leaf: Leaf;
  /** How often a leaf was asked for by something other than its own tab: on a phone the page then turns to it. */
  readonly asked: number;
  turnTo(leaf: Leaf): void;
  ask(leaf: Leaf): void;
};

export const useLeaf = create<LeafState>()((set) => ({
  leaf: 'numbers',
  asked: 0,
  turnTo: (leaf) => set({ leaf }),
  ask: (leaf) => set(({ asked }) => ({ leaf, asked: asked + 1 })),
}));
