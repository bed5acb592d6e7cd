/** Designs with all that lies beside them: listed, removed and put back whole; meshes shared and tidied. */

import { beforeEach, describe, expect, it } from 'vitest';
import { type Backend, memoryBackend } from '../../../src/app/storage/backend';
import { createKept, type Kept } from '../../../src/app/storage/kept';
import type { KeptDesign } from '../../../src/app/storage/keptDesign';
import { MOST_MESH_BYTES } from '../../../src/app/storage/meshBytes';
import { denied, troubleOf } from '../../../src/app/storage/trouble';
import { sha256 } from '../../../src/formats/hash/sha256';

let values: Map<string, unknown>;
let backend: Backend;
let kept: Kept;

beforeEach(() => {
  values = new Map();
  backend = memoryBackend(values);
  kept = createKept(backend);
});

const design = (id: string, fields: Partial<KeptDesign> = {}): KeptDesign => ({
  id,
  fileName: `${id}.evenrun.json`,
  changed: 1,
  origin: 'made',
  inFile: false,
  meshes: {},
  text: `text of ${id}`,
  ...fields,
});
const soup = (...numbers: number[]) => Float32Array.from(numbers);

describe('designs kept', () => {
  it('are listed, the last changed first', async () => {
    await kept.write(design('a', { changed: 5 }));
    await kept.write(design('b', { changed: 9 }));
    await kept.write(design('c', { changed: 7 }));
    await kept.write(design('a', { changed: 8 }));
    expect((await kept.list()).map((d) => [d.id, d.changed])).toEqual([
      ['b', 9],
      ['a', 8],
      ['c', 7],
    ]);
  });

  it('are put back after a removal with their versions and their file', async () => {
    const link = { handle: { name: 'a' }, modified: 3 };
    await kept.write(design('a'));
    await kept.writeVersion({ id: 'v1', of: 'a', name: 'before the shaft', at: 1, text: 'one' });
    await kept.writeVersion({ id: 'v2', of: 'a', name: 'after', at: 2, text: 'two' });
    await kept.setLink('a', link);
    await kept.setStudy('a', 'e1', 'of one engine');
    await kept.setStudy('a', 'e2', 'of another');
    await kept.setStudy('ab', 'e1', 'of another design');
    values.set('study/a', values.get('study/a/e1'));
    await kept.write(design('ab'));
    await kept.writeVersion({ id: 'v1', of: 'ab', name: 'of another', at: 1, text: 'other' });
    const removed = await kept.remove('a');
    expect((await kept.list()).map((d) => d.id)).toEqual(['ab']);
    expect(await kept.versions('a')).toEqual([]);
    expect(await kept.link('a')).toBeNull();
    expect([await kept.study('a', 'e1'), await kept.study('a', 'e3')]).toEqual([null, null]);
    expect(await kept.study('ab', 'e1')).toBe('of another design');
    expect(await kept.versions('ab')).toHaveLength(1);
    await kept.restore(removed!);
    expect(await kept.read('a')).toEqual(design('a'));
    expect((await kept.versions('a')).map((v) => v.name)).toEqual(['after', 'before the shaft']);
    expect(await kept.link('a')).toEqual(link);
    expect([await kept.study('a', 'e1'), await kept.study('a', 'e2')]).toEqual(['of one engine', 'of another']);
    // Kept before there was one for each engine: offered to any, and whoever reads it looks whether it is theirs.
    expect(await kept.study('a', 'e3')).toBe('of one engine');
  });
});

describe('meshes kept', () => {
  it('lie there once and come back to the last bit', async () => {
    const numbers = [0, -0, 1 / 3, 1e-40, -7.25, 4, 5, 6, 7].map(Math.fround);
    const name = await kept.keepMesh(soup(...numbers));
    expect(await kept.keepMesh(soup(...numbers))).toBe(name);
    expect([...values.keys()]).toHaveLength(1);
    const back = await kept.readMesh(name!);
    expect([...back!].every((n, i) => Object.is(n, numbers[i]))).toBe(true);
  });

  it('that were kept at eight bytes a number come back, and are kept anew at four', async () => {
    const bytes = new Uint8Array(Float64Array.of(0.5, 1 / 3, 2, 3, 4, 5, 6, 7, 8).buffer);
    const old = await sha256(bytes);
    values.set(`mesh/${old}`, bytes);
    const back = (await kept.readMesh(old))!;
    expect([...back]).toEqual([0.5, Math.fround(1 / 3), 2, 3, 4, 5, 6, 7, 8]);
    const name = (await kept.keepMesh(back))!;
    expect(name).not.toBe(old);
    expect(await kept.readMesh(name)).toEqual(back);
  });

  it('that are a part of a larger buffer are kept alone', async () => {
    const whole = soup(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
    const name = await kept.keepMesh(whole.subarray(1, 10));
    expect([...(await kept.readMesh(name!))!]).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  it('that are torn are not given out, and are kept anew', async () => {
    const mesh = soup(1, 2, 3, 4, 5, 6, 7, 8, 9);
    const name = (await kept.keepMesh(mesh))!;
    values.set(`mesh/${name}`, (values.get(`mesh/${name}`) as Uint8Array).slice(0, 32));
    expect(await kept.readMesh(name)).toBeNull();
    await kept.keepMesh(mesh);
    expect([...(await kept.readMesh(name))!]).toEqual([...mesh]);
  });

  it('that are too large are refused', async () => {
    expect(await kept.keepMesh(new Float32Array(MOST_MESH_BYTES / 4 + 1))).toBeNull();
    expect(values.size).toBe(0);
  });

  it('are tidied away once no design names them, unless a design cannot be read', async () => {
    const [used, unused] = [await kept.keepMesh(soup(1, 1, 1)), await kept.keepMesh(soup(2, 2, 2))];
    await kept.write(design('a', { meshes: { 'bay.stl': used! } }));
    await backend.put('design/later/a', 'evenrun-kept 2 what is to come');
    await kept.tidy();
    expect(await kept.readMesh(unused!)).not.toBeNull();
    await backend.remove('design/later/a');
    await kept.tidy();
    expect(await kept.readMesh(used!)).not.toBeNull();
    expect(await kept.readMesh(unused!)).toBeNull();
  });
});

describe('trouble', () => {
  it('is told apart', () => {
    expect(troubleOf(new DOMException('no room', 'QuotaExceededError'))).toMatchObject({
      kind: 'full',
      title: 'not kept: storage is full',
    });
    expect(troubleOf(new Error('odd')).remedy).toContain('odd');
    expect(denied(new DOMException('', 'SecurityError')).remedy).toContain('SecurityError');
  });
});
