/**
 * Many small solids of one material as one: what is drawn at once costs once. Each keeps its name, so that it can still
 * be picked alone.
 */
import type { DependencyList } from 'react';
import type { BufferGeometry } from 'three';
import { mergeGeometries } from 'three/addons/utils/BufferGeometryUtils.js';
import type { Ref } from '../../session';
import { useOwned } from './owned';

/** One of them, with the attributes that the others have too. It is used up. */
export type Piece = { readonly geometry: BufferGeometry; readonly ref: Ref };

export type Joined = {
  readonly geometry: BufferGeometry;
  /** Whose the corner is, counted as `Pickable.ref` does. */
  ref(corner: number): Ref;
  dispose(): void;
};

/** @param pieces at least one */
export function join(pieces: readonly Piece[]): Joined {
  const geometry = mergeGeometries(pieces.map((p) => p.geometry));
  let corners = 0;
  const ends = pieces.map(({ geometry: own }) => {
    corners += own.index?.count ?? own.getAttribute('position').count;
    return corners;
  });
  for (const piece of pieces) piece.geometry.dispose();
  return {
    geometry,
    ref: (corner) => pieces[ends.findIndex((end) => corner < end)]!.ref,
    dispose: () => geometry.dispose(),
  };
}

export const useJoined = (make: () => readonly Piece[], deps: DependencyList): Joined =>
  useOwned(() => join(make()), deps);
