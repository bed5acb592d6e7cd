/** Meshes on their way to a worker: their hierarchies go along, and the same mesh stays the same soup there. */
import { expect, it } from 'vitest';
import { adoptCounted, flatTreeOf, hasTree, knownCounted, type Meshes } from '../../geometry';
import { createUnpacker, packedIn } from '../../src/app/meshes/packed';

const triangle = (x: number) => Float32Array.from([x, 0, 0, x + 1, 0, 0, x, 1, 0]);
/** As posting a message copies it. */
const sent = <T extends object>(message: T): T => structuredClone(packedIn(message)) as T;

it('comes with its tree, and with what counts of it', () => {
  const flat = flatTreeOf(triangle(0));
  adoptCounted('cropped', flat.soup, flatTreeOf(triangle(0)).soup);
  const open = createUnpacker();
  const { meshes, job } = open(sent({ job: 'check', meshes: new Map([['bay.stl', flat.soup]]) as Meshes }));
  const there = meshes.get('bay.stl')!;
  expect(job).toBe('check');
  expect([...there]).toEqual([...triangle(0)]);
  expect(there).not.toBe(flat.soup);
  expect(hasTree(there)).toBe(true);
  expect(knownCounted(there).map(([key]) => key)).toEqual(['cropped']);
});

it('is the same soup each time it comes, though every message is a copy', () => {
  const open = createUnpacker();
  const [a, b] = [triangle(0), triangle(5)];
  const first = open(sent({ meshes: new Map([['a.stl', a]]) as Meshes })).meshes.get('a.stl');
  const second = open(
    sent({
      meshes: new Map([
        ['a.stl', a],
        ['b.stl', b],
      ]) as Meshes,
    }),
  ).meshes;
  expect(second.get('a.stl')).toBe(first);
  // Another mesh under the same name is another mesh.
  const other = open(sent({ meshes: new Map([['a.stl', triangle(9)]]) as Meshes })).meshes.get('a.stl')!;
  expect(other[0]).toBe(9);
});

it('leaves messages without meshes as they are, and reaches those one object further in', () => {
  const open = createUnpacker();
  expect(open(sent({ job: 'draft', meshes: null }))).toEqual({ job: 'draft', meshes: null });
  const beside = { before: new Map([['a.stl', triangle(1)]]) as Meshes, after: new Map() as Meshes };
  const back = open(sent({ job: 'compare', beside })).beside;
  expect([...back.before.get('a.stl')!]).toEqual([...triangle(1)]);
  expect(back.after.size).toBe(0);
});
