/** One number of the bend rows set on laid headers: the row then reads it, the ends stay true, and with three bends all can be had. */
import { describe, expect, it } from 'vitest';
import { type BendNumber, bendNumber, pathOf, setBendNumber } from '../../../geometry';
import { random } from '../../random';
import { examples, expectEndsTrue, four } from './designs';

const KINDS = ['straight', 'angle', 'rotation', 'clocking'] as const;

describe.each(Object.entries(examples))('%s', (_, design) => {
  it.each(KINDS)('%s: changed a little, it reads as asked, seed 77', (what) => {
    const next = random(77);
    let [asked, had] = [0, 0];
    for (const { id } of design.runners) {
      const { bends } = pathOf(design, id);
      const indices =
        what === 'clocking' ? [0] : what === 'rotation' ? bends.slice(1).map((_, i) => i + 1) : bends.map((_, i) => i);
      for (const index of indices) {
        const number: BendNumber = what === 'clocking' ? { what } : { what, index };
        const value = bendNumber(design, id, number)! + next.between(1, 4);
        const after = setBendNumber(design, id, number, value);
        asked++;
        if (after === design) {
          // Two bends between two fixed lines have little choice; with a third there is always a way.
          expect(bends.length, `${id} ${what} ${index}`).toBeLessThan(3);
          continue;
        }
        had++;
        const off = bendNumber(after, id, number)! - value;
        expect(Math.abs(off - 360 * Math.round(off / 360))).toBeLessThan(1e-6);
        expectEndsTrue(after, id);
      }
    }
    expect(had / asked).toBeGreaterThan(0.8);
  });
});

it('answers the same design where there is no such bend', () => {
  expect(setBendNumber(four, 'r1', { what: 'angle', index: 9 }, 20)).toBe(four);
});
