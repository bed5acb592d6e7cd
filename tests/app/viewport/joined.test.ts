/** Solids joined into one: each corner still knows whose it is. */
import { BoxGeometry, type BufferGeometry, CylinderGeometry } from 'three';
import { expect, it } from 'vitest';
import { join } from '../../../src/app/viewport/gl/joined';

const pieces = () => [new CylinderGeometry(3, 3, 9, 6).translate(4, 0, 0), new BoxGeometry(1, 2, 3)] as const;
const as = (id: string, geometry: BufferGeometry) => ({ geometry, ref: { kind: 'port', id } as const });

it('all corners are there, and each knows whose it is', () => {
  const [a, b] = pieces();
  const [first, all] = [a.index!.count, a.index!.count + b.index!.count];
  const { geometry, ref } = join([as('a', a), as('b', b)]);
  expect(geometry.index!.count).toBe(all);
  expect(ref(first - 1)).toEqual({ kind: 'port', id: 'a' });
  expect(ref(first)).toEqual({ kind: 'port', id: 'b' });
});

it('pieces without faces of their own are counted corner by corner', () => {
  const [a, b] = pieces().map((piece) => piece.toNonIndexed());
  const first = a!.getAttribute('position').count;
  const { geometry, ref } = join([as('a', a!), as('b', b!)]);
  expect(geometry.index).toBeNull();
  expect(ref(first - 1)).toEqual({ kind: 'port', id: 'a' });
  expect(ref(first)).toEqual({ kind: 'port', id: 'b' });
});
