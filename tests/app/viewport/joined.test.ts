/** Solids joined into one, held against the drawing library's own join. */
import { BoxGeometry, type BufferGeometry, CylinderGeometry } from 'three';
import { mergeGeometries } from 'three/addons/utils/BufferGeometryUtils.js';
import { expect, it } from 'vitest';
import { join } from '../../../src/app/viewport/gl/joined';

const pieces = () => [new CylinderGeometry(3, 3, 9, 6).translate(4, 0, 0), new BoxGeometry(1, 2, 3)] as const;
const as = (id: string, geometry: BufferGeometry) => ({ geometry, ref: { kind: 'port', id } as const });

it('corners and faces are those of all pieces, and each still knows whose it is', () => {
  const theirs = mergeGeometries([...pieces()]);
  const [a, b] = pieces();
  const first = a.index!.count;
  const { geometry, ref } = join([as('a', a), as('b', b)]);
  expect(Object.keys(geometry.attributes).sort()).toEqual(Object.keys(theirs.attributes).sort());
  for (const name of Object.keys(theirs.attributes))
    expect([...geometry.getAttribute(name).array], name).toEqual([...theirs.getAttribute(name).array]);
  expect([...geometry.index!.array]).toEqual([...theirs.index!.array]);
  expect(ref(first - 1)).toEqual({ kind: 'port', id: 'a' });
  expect(ref(first)).toEqual({ kind: 'port', id: 'b' });
});

it('pieces without faces of their own are counted corner by corner', () => {
  const [a, b] = pieces().map((piece) => piece.toNonIndexed());
  const { geometry } = join([as('a', a!), as('b', b!)]);
  expect(geometry.index).toBeNull();
  expect(geometry.getAttribute('position').count).toBe(
    mergeGeometries(pieces().map((piece) => piece.toNonIndexed())).getAttribute('position').count,
  );
});

it('a piece that lacks what the others have is refused', () => {
  const [a, b] = pieces();
  b.deleteAttribute('uv');
  expect(() => join([as('a', a), as('b', b)])).toThrow('no uv');
});
