/** Equal tubes in a ring: pitch circle and the circle that encloses them (circle packing; keys col.2 to col.7). */
import { describe, expect, test } from 'vitest';
import { distance, mergeGeometry } from '../../geometry';
import type { Merge } from '../../shared/design/types';
import { published } from './published';

const merge = (inlets: number, pattern: 'ring' | 'line' = 'ring'): Merge => ({
  id: 'm',
  inlets,
  pattern,
  position: [10, -20, 30],
  axis: [0.2, 0.3, -1],
  up: [1, 0, 0],
  outletDiameter: 60,
  length: 120,
});
type Packing = { pcr: number; enclosing: number };

describe.each([2, 3, 4, 5, 6])('%d tubes in a ring', (n) => {
  const { pcr, enclosing } = published<Packing>(`col.${n}`);
  const od = 42.4;
  const { inlets, body } = mergeGeometry(merge(n), od, od);
  test('pitch circle and enclosing circle', () => {
    for (const inlet of inlets) expect(distance(inlet.position, [10, -20, 30]) / od).toBeCloseTo(pcr, 8);
    expect((2 * body.startRadius) / od).toBeCloseTo(enclosing, 8);
  });
  test('each touches its neighbours and none overlaps', () => {
    for (const [i, p] of inlets.entries()) {
      expect(distance(p.position, inlets[(i + 1) % n]!.position)).toBeCloseTo(od, 9);
      for (const q of inlets.slice(i + 1)) expect(distance(p.position, q.position)).toBeGreaterThan(od - 1e-9);
    }
  });
});

// Six round one: the circle about seven is that about six, as the seventh fills the middle.
test('seven tubes need no larger circle than six (col.7)', () => {
  const { enclosing, pcr } = published<Packing>('col.7');
  const { inlets, body } = mergeGeometry(merge(6), 50, 50);
  expect(body.startRadius / 25).toBeCloseTo(enclosing, 9);
  for (const inlet of inlets) expect(distance(inlet.position, [10, -20, 30])).toBeCloseTo(pcr * 50, 9);
});
