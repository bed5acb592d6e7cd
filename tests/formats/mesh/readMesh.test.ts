/** Files of every kind by one door: told apart by content, refused with the remedy, and what there is to say of them. */
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { MeshError } from '../../../src/formats/mesh/meshError';
import { noteLines } from '../../../src/formats/mesh/notes';
import { readMesh, tooFar } from '../../../src/formats/mesh/readMesh';
import { random } from '../../random';
import { SOUP, tetrahedronGlb, tetrahedronPly, text } from './make';

const OBJ = 'v 0 0 0\nv 3 0 0\nv 0 4 0\nv 0 0 5\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n';

function stl(soup: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(84 + (50 * soup.length) / 9);
  const view = new DataView(bytes.buffer);
  view.setUint32(80, soup.length / 9, true);
  soup.forEach((x, i) => void view.setFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), x, true));
  return bytes;
}

const KINDS: [string, Uint8Array][] = [
  ['bay.stl', stl(SOUP)],
  ['bay.OBJ', text(OBJ)],
  ['bay.ply', tetrahedronPly('ascii')],
  ['bay.ply', tetrahedronPly('big')],
  ['bay.glb', tetrahedronGlb()],
];

test.each(KINDS)('%s', (name, bytes) => {
  const parts: number[] = [];
  const { soup, notes } = readMesh(name, bytes, (part) => parts.push(part));
  expect([...soup]).toEqual(SOUP);
  expect(notes).toMatchObject({ triangles: 4, dropped: 0, box: [0, 0, 0, 3, 4, 5], openEdges: 0, sharedEdges: 0 });
  expect(noteLines(notes)).toEqual([]);
  expect(parts.at(-1)).toBe(1);
  expect(parts).toEqual([...parts].sort((a, b) => a - b));
});

test('sizes help to tell the unit', () => {
  expect(readMesh('bay.obj', text(OBJ)).notes.size).toBe(
    '3 x 4 x 5 units: as mm 5 mm, as cm 5 cm, as m 5 m, as in 12.7 cm at its longest',
  );
  expect(readMesh('bay.glb', tetrahedronGlb()).notes.size).toBe('3 x 4 x 5 m');
});

test('triangles without area are left out and counted; open and shared edges too', () => {
  const [a, b] = ['f 1 2 3\n', 'f 1 2 4\n'];
  const { soup, notes } = readMesh('bay.obj', text(`${OBJ}${a}f 1 1 2\nf 2 2 2\n${b}v 6 0 0\nf 1 2 5\n`));
  expect(soup.length).toBe(9 * 6);
  expect(notes).toMatchObject({ triangles: 6, dropped: 3, openEdges: 0, sharedEdges: 5 });
  expect(noteLines(notes).join()).toMatch(/3 triangles without area.*5 edges belong to more than two/);
  const { notes: sheet } = readMesh('bay.obj', text('v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nf 1 2 3 4'));
  expect(sheet).toMatchObject({ openEdges: 4, sharedEdges: 0 });
});

describe('refused', () => {
  const huge = (by: number): string => OBJ.replace('3 0 0', `${by} 0 0`);
  test.each<[string, string, Uint8Array, RegExp]>([
    ['empty', 'bay.stl', new Uint8Array(0), /^it is empty/],
    ['gzip', 'bay.ply', gzipSync(tetrahedronPly('ascii')), /packed with gzip; unpack it first/],
    ['a bomb', 'bay.stl', gzipSync(new Uint8Array(20e6)), /packed with gzip/],
    ['zip', 'bay.stl', text('PK\x03\x04 and so on'), /a zip archive \(3MF files are, too\)/],
    ['STEP', 'bay.stl', text('ISO-10303-21;\nHEADER;'), /STEP; export it as STL/],
    ['glTF in parts', 'bay.glb', text('{"asset":{"version":"2.0"}}'), /\.gltf.*one GLB/],
    ['PLY named as STL', 'bay.stl', tetrahedronPly('little'), /named as STL and is PLY: name it with \.ply/],
    ['STL named as GLB', 'bay.glb', stl(SOUP), /named as GLB and is STL/],
    ['OBJ named as PLY', 'bay.ply', text(OBJ), /named as PLY and is OBJ/],
    ['GLB without a name', 'bay', tetrahedronGlb(), /GLB under another name/],
    ['a text', 'bay.txt', text('hello'), /no mesh that is known; allowed: \.stl, \.obj/],
    ['a text named as STL', 'bay.stl', text('hello'), /not an STL file/],
    [
      'a point a million kilometres off',
      'bay.obj',
      text(huge(1e12)),
      /reaches at least a million km.*even in millimetres.*at most 100 m/,
    ],
    ['nothing but triangles without area', 'bay.obj', text('v 0 0 0\nv 1 0 0\nf 1 2 1'), /none of its 1 triangles/],
    [
      'GLB in millimetres',
      'bay.glb',
      tetrahedronGlb((j) => (j.nodes[0].scale = [1e3, 1e3, 1e3])),
      /5 km.*in that unit/,
    ],
  ])('%s', (_, name, bytes, message) => {
    expect(() => readMesh(name, bytes)).toThrow(MeshError);
    expect(() => readMesh(name, bytes)).toThrow(message);
  });

  test('what is too far in the unit that is said', () => {
    expect(tooFar([0, 0, 0, 90, 1, 1], 1000)).toBeNull();
    expect(tooFar([0, 0, 0, 101, 1, 1], 1000)).toMatch(/101 m/);
  });
});

test('an STL under a name that says nothing is read, as it always was', () => {
  expect([...readMesh('bay', stl(SOUP)).soup]).toEqual(SOUP);
});

test.each([1, 2, 3, 4])('files cut or changed anywhere are read or refused, and nothing worse, seed %i', (seed) => {
  const next = random(seed);
  for (let round = 0; round < 300; round++) {
    const [name, whole] = KINDS[next.whole(0, KINDS.length - 1)]!;
    const bytes = whole.slice(0, next() < 0.5 ? whole.length : next.whole(0, whole.length));
    for (let i = next.whole(0, 4); i > 0 && bytes.length > 0; i--)
      bytes[next.whole(0, bytes.length - 1)] = next.whole(0, 255);
    try {
      const { soup } = readMesh(name, bytes);
      expect(soup.every(Number.isFinite)).toBe(true);
      expect(soup.length).toBeGreaterThan(0);
    } catch (error) {
      expect(error).toBeInstanceOf(MeshError);
    }
  }
});
