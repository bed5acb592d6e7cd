/** A window on its bar: in order from left to right, the length asked where it belongs, and red only where it is out of reach. */
import { describe, expect, it } from 'vitest';
import { barOf } from '../../../src/app/windows/bar';

const open = { shortest: 600, longest: null, unbounded: true };
const closed = { shortest: 600, longest: 700, unbounded: false };

describe('the bar of a window', () => {
  it('has the length asked between its ends where it is in reach', () => {
    const { from, to, mark, isOutside } = barOf(closed, 650)!;
    expect(isOutside).toBe(false);
    expect([0 < from, from < mark!, mark! < to, to < 1]).toEqual([true, true, true, true]);
    expect(mark! - from).toBeCloseTo(to - mark!, 9);
  });

  it('has it beyond its ends where it is not', () => {
    const below = barOf(closed, 500)!;
    expect([below.isOutside, 0 < below.mark!, below.mark! < below.from]).toEqual([true, true, true]);
    const above = barOf(closed, 900)!;
    expect([above.isOutside, above.mark! > above.to, above.mark! < 1]).toEqual([true, true, true]);
  });

  it('runs to the end where nothing limits it', () => {
    expect(barOf(open, 2000)).toMatchObject({ to: 1, isOutside: false });
    expect(barOf(open, 599)).toMatchObject({ isOutside: true });
    expect(barOf(open, null)).toMatchObject({ mark: null, isOutside: false });
  });

  it('is not drawn where there is nothing to draw', () => {
    expect(barOf({ shortest: null, longest: null, unbounded: false }, 600)).toBeNull();
    expect(barOf({ shortest: 700, longest: 600, unbounded: false }, 650)).toBeNull();
  });
});
