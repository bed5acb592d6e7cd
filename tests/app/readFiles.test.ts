/** Files handed over: told apart by name, read or refused as a whole, with what is missing named. */
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { writeDesign } from '../../shared/design/write';
import { type NamedFile, readFiles as readAll } from '../../src/app/actions/readFiles';
import { linesOf } from '../../src/app/notices';
import { readMesh as readAnyMesh } from '../../src/formats/mesh/readMesh';
import { designWith } from './designs';

const file = (name: string, text: string) => ({ name, file: new Blob([text]) });
/** As the worker does it. */
const readMesh = async ({ name, file: blob }: NamedFile) =>
  readAnyMesh(name, new Uint8Array(await blob.arrayBuffer())).soup;
const readFiles = (files: readonly NamedFile[]) => readAll(files, readMesh);
const plain = designWith(undefined);
const withMesh: Design = {
  ...plain,
  surroundings: [{ id: 'bay', shape: 'mesh', file: 'bay.stl', clearance: 5 }],
};
const facet =
  'solid s\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid s\n';

describe('reading files', () => {
  it('opens a design and says which meshes are missing', async () => {
    const handed = await readFiles([file('a.evenrun.json', writeDesign(withMesh))]);
    expect(handed.design).toEqual({ design: withMesh, fileName: 'a.evenrun.json' });
    expect(handed.missing).toEqual(['bay.stl']);
  });

  it('takes the meshes along, in any order', async () => {
    const handed = await readFiles([file('bay.stl', facet), file('a.evenrun.json', writeDesign(withMesh))]);
    expect(handed.missing).toEqual([]);
    expect([...handed.meshes.get('bay.stl')!]).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0]);
  });

  it('reads meshes of other kinds', async () => {
    const obj = 'v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n';
    const handed = await readFiles([file('bay.obj', obj)]);
    expect([...handed.meshes.get('bay.obj')!]).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0]);
    await expect(readFiles([file('bay.ply', obj)])).rejects.toThrow(/bay\.ply: it is named as PLY and is OBJ/);
  });

  it('reads meshes alone, for a design that is open', async () => {
    const handed = await readFiles([file('bay.stl', facet)]);
    expect(handed.design).toBeNull();
    expect(handed.meshes.size).toBe(1);
  });

  it.each([
    ['a stranger', [file('notes.txt', 'hello')], /notes\.txt is neither/],
    ['two designs', [file('a.json', '{}'), file('b.json', '{}')], /a\.json and b\.json/],
    ['a broken mesh', [file('bay.stl', 'solid s\nfacet\nvertex 1 2\n')], /bay\.stl: line 3/],
    [
      'bytes that are no text',
      [{ name: 'a.json', file: new Blob([new Uint8Array([0xff, 0xfe, 0x00])]) }],
      /a\.json is not text/,
    ],
  ])('refuses %s', async (_, files, message) => {
    await expect(readFiles(files)).rejects.toThrow(message);
  });

  it('shows a refused design by place, found and allowed', async () => {
    const broken = { ...plain, ports: [{ ...plain.ports[0]!, direction: [0, 0, 0] }] };
    let caught: unknown;
    try {
      await readFiles([file('a.evenrun.json', JSON.stringify(broken))]);
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(DesignError);
    expect(linesOf(caught)[0]).toMatch(/^ports\/p1\/direction: found .+; allowed: /);
  });
});
