/**
 * A mesh's hierarchy made ready for every thread. Where the page is isolated from other origins its arrays lie in shared
 * memory: two million triangles are then there once, however many workers measure against them. Elsewhere they are copied.
 */
import type { FlatTree } from '../../../geometry';

export const canShare = (): boolean =>
  typeof SharedArrayBuffer !== 'undefined' &&
  (globalThis as { crossOriginIsolated?: boolean }).crossOriginIsolated === true;

const ARRAYS = ['bounds', 'link', 'count', 'soup', 'kinds'] as const;

type Buffered = { readonly buffer: ArrayBufferLike };

/** The same numbers in shared memory, or as they are where there is none. */
export function shared(flat: FlatTree): FlatTree {
  if (!canShare()) return flat;
  const moved = ARRAYS.map((name) => [name, inShared(flat[name])]);
  return { ...flat, ...Object.fromEntries(moved) };
}

function inShared<A extends Float32Array | Uint32Array | Uint8Array>(array: A): A {
  if (array.buffer instanceof SharedArrayBuffer) return array;
  const Kind = array.constructor as new (buffer: ArrayBufferLike) => A;
  const there = new Kind(new SharedArrayBuffer(array.byteLength));
  there.set(array);
  return there;
}

/** What goes over to the other thread in one piece, and is gone here. Shared memory stays. */
export const transfers = (flat: FlatTree): ArrayBuffer[] => [
  ...new Set(
    ARRAYS.map((name) => (flat[name] as Buffered).buffer).filter((b): b is ArrayBuffer => b instanceof ArrayBuffer),
  ),
];
