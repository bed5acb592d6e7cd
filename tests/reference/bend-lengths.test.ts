/** Arc, setback, gain and developed length of bends against published values; keys of fabrication.json in the tests. */
import { expect, test } from 'vitest';
import { centerline, setback } from '../../geometry';
import { published } from './published';

const RADIANS = Math.PI / 180;
/** One bend of `degrees` between legs of `a` and `b`, measured to the intersection. */
function oneBend(radius: number, degrees: number, a: number, b: number) {
  const t = degrees * RADIANS;
  return centerline(
    [
      [-a, 0, 0],
      [0, 0, 0],
      [b * Math.cos(t), b * Math.sin(t), 0],
    ],
    [radius],
  );
}

test.each(Object.entries(published<Record<string, number>>('bend.gain')))(
  'gain of a bend of %s° (bend.gain): %d × radius',
  (degrees, gain) => {
    const radius = 63.6;
    const line = oneBend(radius, Number(degrees), 400, 500);
    expect((900 - line.length) / radius).toBeCloseTo(gain, 6);
  },
);

test('arc length for each degree and mm of radius (bend.arc), setback R·tan(A/2) (bend.setback)', () => {
  const line = oneBend(100, 37, 200, 200);
  expect(line.segments[1]!.length / (100 * 37)).toBeCloseTo(published<number>('bend.arc'), 12);
  expect(published('bend.setback')).toBe('CLR*tan(A/2)');
  expect(line.setbacks[0]).toBeCloseTo(100 * Math.tan(18.5 * RADIANS), 12);
  expect(setback(57.2, 90 * RADIANS)).toBeCloseTo(57.2, 12);
});

// An apprenticeship workbook: R 24 in, OD 2.375, 48 and 44 over the outside. It prints 37.68 and 79.305 (with 1.57 for π/2).
test('the published developed length (bend.jatc)', () => {
  const it = published<Record<'D1' | 'D2' | 'DL' | 'total' | 'exact_DL' | 'exact_total', number>>('bend.jatc');
  const toCorner = (outside: number): number => outside - 2.375 / 2;
  const line = oneBend(24, 90, toCorner(48), toCorner(44));
  expect(line.straights[0]).toBeCloseTo(it.D1, 10);
  expect(line.straights[1]).toBeCloseTo(it.D2, 10);
  expect(line.segments[1]!.length).toBeCloseTo(it.exact_DL, 4);
  expect(line.length).toBeCloseTo(it.exact_total, 4);
  expect(Math.abs(line.segments[1]!.length - it.DL)).toBeLessThan(0.02);
  expect(Math.abs(line.length - it.total)).toBeLessThan(0.02);
});
