/** A mesh's edges at which its faces turn sharply, for lines on what is drawn: the places of both ends of each, in the mesh's frame. */
import { type BufferGeometry, EdgesGeometry } from 'three';

/** @param angle that faces turn by at least, degrees */
export function sharpEdges(geometry: BufferGeometry, angle: number): ArrayLike<number> {
  const found = new EdgesGeometry(geometry, angle);
  const pairs = found.getAttribute('position').array;
  found.dispose();
  return pairs;
}
