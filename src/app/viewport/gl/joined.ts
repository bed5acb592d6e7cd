/**
 * Many small solids of one material as one: what is drawn at once costs once. Each keeps its name, so that it can still
 * be picked alone.
 */
import type { DependencyList } from 'react';
import { BufferAttribute, BufferGeometry } from 'three';
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
  const geometry = oneOf(pieces.map((p) => p.geometry));
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

/** The drawing library's own join knows groups, morphs and packed numbers, and is a kilobyte of the first picture for it. */
function oneOf(parts: readonly BufferGeometry[]): BufferGeometry {
  const whole = new BufferGeometry();
  for (const name of Object.keys(parts[0]!.attributes)) {
    const own = parts.map((part) => part.getAttribute(name) as BufferAttribute | undefined);
    if (!own.every((a) => a !== undefined)) throw new Error(`A piece to be joined has no ${name}.`);
    const numbers = new Float32Array(own.reduce((sum, { array }) => sum + array.length, 0));
    let at = 0;
    for (const { array } of own) {
      numbers.set(array, at);
      at += array.length;
    }
    whole.setAttribute(name, new BufferAttribute(numbers, own[0]!.itemSize));
  }
  if (parts.every(({ index }) => index === null)) return whole;
  const corners: number[] = [];
  let before = 0;
  for (const { index, attributes } of parts) {
    const { count } = attributes.position!;
    for (let k = 0; k < (index?.count ?? count); k++) corners.push(before + (index?.getX(k) ?? k));
    before += count;
  }
  whole.setIndex(corners);
  return whole;
}

export const useJoined = (make: () => readonly Piece[], deps: DependencyList): Joined =>
  useOwned(() => join(make()), deps);
