/** What a file seems to be from its first bytes, whatever its name says. */
import { isBinaryStl } from '../stl/read';

export type MeshKind = 'STL' | 'OBJ' | 'PLY' | 'GLB';

/** One that is read, or why it is not: a clause that follows the file's name. */
export type Sniffed = { readonly kind: MeshKind } | { readonly refusal: string };

const refuse = (what: string, remedy: string): Sniffed => ({ refusal: `it is ${what}; ${remedy}` });

const UNPACK = 'unpack it first, and open what is inside';

/** First bytes of what strangers take for meshes. */
const MAGICS: readonly (readonly [bytes: readonly number[], found: Sniffed])[] = [
  [[0x1f, 0x8b], refuse('packed with gzip', UNPACK)],
  [[0x50, 0x4b, 0x03, 0x04], refuse('a zip archive (3MF files are, too)', 'unpack it first, or export it as STL')],
  [[0x42, 0x5a, 0x68], refuse('packed with bzip2', UNPACK)],
  [[0xfd, 0x37, 0x7a, 0x58, 0x5a], refuse('packed with xz', UNPACK)],
  [[0x28, 0xb5, 0x2f, 0xfd], refuse('packed with zstd', UNPACK)],
  [[0x37, 0x7a, 0xbc, 0xaf], refuse('a 7z archive', UNPACK)],
  [[0x52, 0x61, 0x72, 0x21], refuse('a rar archive', UNPACK)],
  [[0x67, 0x6c, 0x54, 0x46], { kind: 'GLB' }],
  [[0x25, 0x50, 0x44, 0x46], refuse('a PDF', 'export the mesh itself')],
  [[0x89, 0x50, 0x4e, 0x47], refuse('a picture (PNG)', 'export the mesh itself')],
  [[0xff, 0xd8, 0xff], refuse('a picture (JPEG)', 'export the mesh itself')],
];

export function sniff(bytes: Uint8Array): Sniffed | null {
  if (bytes.length === 0) return refuse('empty', 'copy or export it again');
  const magic = MAGICS.find(([first]) => first.every((byte, i) => bytes[i] === byte));
  if (magic) return magic[1];
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 4096));
  if (/^ply\s/.test(start)) return { kind: 'PLY' };
  if (isBinaryStl(bytes)) return { kind: 'STL' };
  if (start.includes('\0')) return null;
  if (/^\s*solid\b/i.test(start)) return { kind: 'STL' };
  if (/^\s*ISO-10303-21/.test(start)) return refuse('a CAD model in STEP', 'export it as STL or GLB');
  if (/^\s*\{/.test(start) && /"asset"|"meshes"|"buffers"/.test(start))
    return refuse('glTF in parts (.gltf)', 'export it as one GLB with everything in it');
  if (/^\s*(v|vn|vt|f|g|o|mtllib|usemtl)\s/m.test(start)) return { kind: 'OBJ' };
  return null;
}
