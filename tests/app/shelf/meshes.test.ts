/** Meshes kept beside the designs that name them: whole, once, and never in the way of keeping the design itself. */
import { beforeEach, expect, it, vi } from 'vitest';
import type { Design } from '../../../shared/design/types';
import { AGAIN } from '../../../src/app/shelf/keeper';
import { memoryBackend } from '../../../src/app/storage/backend';
import { MOST_MESH_BYTES } from '../../../src/app/storage/meshBytes';
import { designWith } from '../designs';
import { fakeBrowser } from './pages';

const FILE = 'four.evenrun.json';
const BAY = 'bay.stl';
/** One triangle, with numbers that take every bit. */
const soup = () => Float32Array.of(0.1, 0, 0, 1 / 3, 0, 0, 0, 2 / 7, 0);
const around = (title: string, ...files: string[]): Design => ({
  ...designWith(undefined),
  title,
  surroundings: files.map((file, i) => ({ id: `s${i + 1}`, shape: 'mesh', file })),
});

let backend = memoryBackend();
let page: ReturnType<ReturnType<typeof fakeBrowser>['openPage']>;
beforeEach(() => {
  backend = memoryBackend();
  page = fakeBrowser(backend).openPage();
});
const keptMeshes = () => backend.keys('mesh/');
const edit = (title: string) => page.documents.apply({ ...page.now().settled!, title }, 'Edit');

it('a mesh comes back with its design in the next page, to the bit', async () => {
  const id = page.shelf.open(around('a', BAY), FILE, new Map([[BAY, soup()]]), 'made');
  await page.shelf.flush();
  const next = fakeBrowser(backend).openPage();
  expect(await next.shelf.returnTo(id)).toEqual([]);
  expect(next.now().meshes).toEqual(new Map([[BAY, soup()]]));
});

it('one mesh of two designs is written once; another of the same name does not take its place', async () => {
  const { put } = backend;
  const written: string[] = [];
  backend.put = (key, value) => {
    if (key.startsWith('mesh/')) written.push(key);
    return put(key, value);
  };
  const a = page.shelf.open(around('a', BAY), FILE, new Map([[BAY, soup()]]), 'made');
  page.shelf.open(around('b', 'scan.stl'), FILE, new Map([['scan.stl', soup()]]), 'made');
  await page.shelf.flush();
  expect(written).toHaveLength(1);
  const other = soup().map((x) => x + 1);
  const c = page.shelf.open(around('c', BAY), FILE, new Map([[BAY, other]]), 'made');
  await page.shelf.flush();
  expect(await keptMeshes()).toHaveLength(2);
  const next = fakeBrowser(backend).openPage();
  await next.shelf.returnTo(a);
  expect(next.now().meshes.get(BAY)).toEqual(soup());
  await next.shelf.returnTo(c);
  expect(next.now().meshes.get(BAY)).toEqual(other);
});

it('a mesh that comes after its design is kept with it', async () => {
  const id = page.shelf.open(around('a', BAY), FILE, new Map(), 'made');
  await page.shelf.flush();
  expect((await page.kept.read(id))!.meshes).toEqual({});
  page.documents.addMeshes(new Map([[BAY, soup()]]));
  await page.shelf.flush();
  expect(Object.keys((await page.kept.read(id))!.meshes)).toEqual([BAY]);
});

it('meshes that no surrounding names any more are not the design’s', async () => {
  const both = new Map([
    [BAY, soup()],
    ['scan.stl', soup().map((x) => -x)],
  ]);
  const id = page.shelf.open(around('a', BAY), FILE, both, 'made');
  await page.shelf.flush();
  expect(Object.keys((await page.kept.read(id))!.meshes)).toEqual([BAY]);
  expect(await keptMeshes()).toHaveLength(1);
});

it('one that is too large is told of once and left out; the design is kept all the same', async () => {
  const large = new Float32Array(MOST_MESH_BYTES / 4 + 9);
  const meshes = new Map([
    ['huge.stl', large],
    [BAY, soup()],
  ]);
  const id = page.shelf.open(around('a', 'huge.stl', BAY), FILE, meshes, 'made');
  expect(await page.shelf.flush()).toBe(true);
  edit('b');
  await page.shelf.flush();
  expect(page.tooLarge).toEqual(['huge.stl']);
  expect(page.state.getState().trouble).toBeNull();
  const next = fakeBrowser(backend).openPage();
  expect(await next.shelf.returnTo(id)).toEqual(['huge.stl']);
  expect(next.now()).toMatchObject({ settled: { title: 'b' } });
  expect([...next.now().meshes.keys()]).toEqual([BAY]);
});

it('one that finds no room leaves the design kept, is told of, and is kept once there is room', async () => {
  const sound = backend;
  let full = true;
  const put = (key: string, value: unknown) =>
    full && key.startsWith('mesh/')
      ? Promise.reject(new DOMException('no', 'QuotaExceededError'))
      : sound.put(key, value);
  page = fakeBrowser({ ...sound, put }).openPage();
  const id = page.shelf.open(around('a', BAY), FILE, new Map([[BAY, soup()]]), 'made');
  expect(await page.shelf.flush()).toBe(false);
  expect(page.state.getState().trouble?.kind).toBe('full');
  expect(await page.kept.read(id)).toMatchObject({ meshes: {} });
  expect(page.shelf.waits()).toBe(true);
  full = false;
  page.timers.run(AGAIN);
  await vi.waitFor(() => expect(page.state.getState().trouble).toBeNull());
  expect(Object.keys((await page.kept.read(id))!.meshes)).toEqual([BAY]);
});

it('one that was damaged in storage is missing, and kept anew when it is opened again', async () => {
  const id = page.shelf.open(around('a', BAY), FILE, new Map([[BAY, soup()]]), 'made');
  await page.shelf.flush();
  const [key] = await keptMeshes();
  const bytes = (await backend.get(key!)) as Uint8Array;
  await backend.put(
    key!,
    bytes.map((byte, i) => (i === 7 ? byte ^ 1 : byte)),
  );
  const next = fakeBrowser(backend).openPage();
  expect(await next.shelf.returnTo(id)).toEqual([BAY]);
  expect(next.now().meshes.size).toBe(0);
  next.documents.addMeshes(new Map([[BAY, soup()]]));
  await next.shelf.flush();
  expect(await keptMeshes()).toEqual([key]);
  expect(await backend.get(key!)).toEqual(bytes);
});
