/**
 * Hierarchies remembered by the triangles that they are of, so that nobody builds one twice. One thread may build it, post its
 * arrays (moved over, or shared memory), and the others adopt it: `adoptTree(flat)` is then the soup to hand about.
 */
import { buildTree, type FlatTree, type Progress } from './buildTree';

const known = new WeakMap<Float32Array, FlatTree>();

/** @param soup nine numbers a triangle, in the file's own frame and unit */
export function flatTreeOf(soup: Float32Array, progress?: Progress): FlatTree {
  const kept = known.get(soup);
  if (kept) return kept;
  const flat = buildTree(soup, progress);
  known.set(soup, flat);
  // Its sorted triangles are the same soup: who goes on with them can let the first go.
  known.set(flat.soup, flat);
  return flat;
}

/** @param flat as `flatTreeOf` gave it, here or in another thread; @returns its triangles, whose tree is now known here */
export function adoptTree(flat: FlatTree): Float32Array {
  known.set(flat.soup, flat);
  return flat.soup;
}

/** Whether asking for its tree costs nothing. */
export const hasTree = (soup: Float32Array): boolean => known.has(soup);

/** Its tree where that is known; nothing is built. */
export const knownTree = (soup: Float32Array): FlatTree | undefined => known.get(soup);
