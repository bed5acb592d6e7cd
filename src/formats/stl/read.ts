/**
 * STL of either kind → triangles, nine numbers each, in the file's own unit. Files come from strangers' scanners: whatever
 * is cut short, miscounted or not a number is refused with what was found and what to do, never half read.
 */
import type { TriangleSoup } from '../../../geometry';
import { MeshError, MOST_TRIANGLES, type ReadProgress, STRIDE, tooMany } from '../mesh/meshError';
import { readAsciiStl } from './readAscii';
import { STL_HEADER_BYTES, STL_TRIANGLE_BYTES } from './write';

/** @throws MeshError */
export function readStl(bytes: Uint8Array, progress?: ReadProgress): TriangleSoup {
  const soup = isBinary(bytes) ? readBinary(bytes, progress) : readAsciiStl(bytes, progress);
  if (soup.length === 0) throw new MeshError('it holds no triangles; export the surface again');
  return soup;
}

/** A binary header may begin with "solid" all the same, so the size decides first, then whether it reads as text. */
function isBinary(bytes: Uint8Array): boolean {
  if (isBinaryStl(bytes)) return true;
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 1024));
  return !(/^\s*solid\b/i.test(start) && !start.includes('\0'));
}

/** Whether its size is what its count of triangles promises: no other kind of file's is, but by chance. */
export const isBinaryStl = (bytes: Uint8Array): boolean =>
  bytes.length >= STL_HEADER_BYTES + 4 && bytes.length === sizeOf(countIn(bytes));

const countIn = (bytes: Uint8Array): number =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(STL_HEADER_BYTES, true);

const sizeOf = (count: number): number => STL_HEADER_BYTES + 4 + STL_TRIANGLE_BYTES * count;

function readBinary(bytes: Uint8Array, progress?: ReadProgress): TriangleSoup {
  const least = STL_HEADER_BYTES + 4;
  if (bytes.length < least)
    throw new MeshError(`it is not an STL file: ${bytes.length} bytes, and a binary one has at least ${least}`);
  const count = countIn(bytes);
  const promised = sizeOf(count);
  if (promised !== bytes.length) {
    const how = promised > bytes.length ? 'cut short' : 'longer than it says';
    throw new MeshError(
      `it is ${how}, or not an STL file: its count of ${count} triangles makes ${promised} bytes, it has ${bytes.length}; copy or export it again`,
    );
  }
  if (count > MOST_TRIANGLES) throw tooMany(count);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const soup = new Float32Array(9 * count);
  for (let t = 0; t < count; t++) {
    if (progress && t % STRIDE === 0) progress(t / count);
    const corners = least + STL_TRIANGLE_BYTES * t + 12;
    for (let k = 0; k < 9; k++) {
      const value = view.getFloat32(corners + 4 * k, true);
      if (!Number.isFinite(value))
        throw new MeshError(`triangle ${t + 1} of ${count} has a corner that is ${value}, not a finite number`);
      soup[9 * t + k] = value;
    }
  }
  return soup;
}
