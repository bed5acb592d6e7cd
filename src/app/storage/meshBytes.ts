/**
 * Meshes that designs name, kept by their own checksum: one scan used by five designs lies there once, and is never
 * written over. Triangles as they are held, four bytes a number, so that clearances come out the same. The names of those kept by
 * earlier versions, eight bytes a number, have no `SINGLE` before the checksum; they are read still.
 */
import type { TriangleSoup } from '../../../geometry';
import { sha256 } from '../../formats/hash/sha256';
import type { Backend } from './backend';

/** Some 2,300,000 triangles. Beyond it a browser's storage is the wrong place; the mesh is opened from its file again. */
export const MOST_MESH_BYTES = 80 * 2 ** 20;

const PREFIX = 'mesh/';
/** Before the checksum in the name: single precision. */
const SINGLE = 'f32-';

const names = new WeakMap<TriangleSoup, Promise<string>>();

/** A copy of its own: neither checksums nor storage take memory that is shared with workers. */
function bytesOf(soup: TriangleSoup): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(soup.byteLength);
  bytes.set(new Uint8Array(soup.buffer, soup.byteOffset, soup.byteLength));
  return bytes;
}

function nameOf(soup: TriangleSoup): Promise<string> {
  const known = names.get(soup) ?? sha256(bytesOf(soup)).then((sum) => SINGLE + sum);
  names.set(soup, known);
  return known;
}

/** For triangles that were kept under this name, whatever order they are in now: they are not written again. */
export const knowName = (soup: TriangleSoup, name: string): void => {
  // One of eight bytes is kept anew, under the name that its four have.
  if (name.startsWith(SINGLE)) names.set(soup, Promise.resolve(name));
};

/** The name it is kept under; null where it is too large. */
export async function keepMesh(backend: Backend, soup: TriangleSoup): Promise<string | null> {
  if (soup.byteLength > MOST_MESH_BYTES) return null;
  const name = await nameOf(soup);
  if ((await backend.keys(PREFIX + name)).length === 0) await backend.put(PREFIX + name, bytesOf(soup));
  return name;
}

/** Null where it is gone or not whole; what is not whole is cleared away, to be kept anew. */
export async function readMesh(backend: Backend, name: string): Promise<TriangleSoup | null> {
  const bytes = await backend.get(PREFIX + name);
  if (!(bytes instanceof Uint8Array)) return null;
  const whole = new Uint8Array(bytes);
  const isSingle = name.startsWith(SINGLE);
  if ((await sha256(whole)) !== (isSingle ? name.slice(SINGLE.length) : name)) {
    await backend.remove(PREFIX + name);
    return null;
  }
  // One of eight bytes is kept anew, under the name that its four have.
  if (!isSingle) return Float32Array.from(new Float64Array(whole.buffer));
  const soup = new Float32Array(whole.buffer);
  names.set(soup, Promise.resolve(name));
  return soup;
}

/** Clears away what no design names any more. Only while no other page is open: one might be about to name it. */
export async function tidyMeshes(backend: Backend, used: ReadonlySet<string>): Promise<void> {
  for (const key of await backend.keys(PREFIX)) if (!used.has(key.slice(PREFIX.length))) await backend.remove(key);
}
