/** What people type, and what they are shown. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatAngle, formatLength, lengthParts, parseLength } from '../../shared/units';

const typed: readonly (readonly [text: string, display: 'mm' | 'in', mm: number])[] = [
  ['42.4', 'mm', 42.4],
  [' 42.4 ', 'mm', 42.4],
  ['42,4', 'mm', 42.4],
  ['.5', 'in', 12.7],
  ['42.', 'mm', 42],
  ['-3', 'mm', -3],
  ['−3', 'mm', -3],
  ['1 5/8', 'in', 41.275],
  ['1 5/8 in', 'mm', 41.275],
  ['1⅝"', 'mm', 41.275],
  ['5/8in', 'mm', 15.875],
  ['½', 'in', 12.7],
  ['1.5"', 'mm', 38.1],
  ['1.5”', 'mm', 38.1],
  ['2 inches', 'mm', 50.8],
  ["1'", 'mm', 304.8],
  [`1' 6"`, 'mm', 457.2],
  [`1'6 1/2"`, 'mm', 469.9],
  [`1 ft 6 in + 1 mm`, 'mm', 458.2],
  ["1''", 'mm', 25.4],
  ['4.2 CM', 'in', 42],
  ['0.82 m', 'in', 820],
  ['2*42.4+4', 'mm', 88.8],
  ['2 × 42.4 + 4', 'mm', 88.8],
  ['2*42.4 mm', 'in', 84.8],
  ['(1 + 5/8) in', 'mm', 41.275],
  ['1 in + 1', 'mm', 26.4],
  ['1 in + 1', 'in', 50.8],
  ['1 - 5/8', 'in', 9.525],
  ['10/4', 'mm', 2.5],
  ['12/4/3', 'mm', 1],
  ['12/(4+2)', 'mm', 2],
  ['10 - 2 - 3', 'mm', 5],
  ['2 + 3*4', 'mm', 14],
  ['-(2+3)*-2', 'mm', 10],
  ['3 in / 2 in', 'mm', 1.5],
  ['1,5 + 2,25', 'mm', 3.75],
  ['1/2.5', 'mm', 0.4],
  ['0,1234', 'mm', 0.1234],
];

test.each(typed)('%s in %s is %d mm', (text, display, mm) => {
  const answer = parseLength(text, display);
  expect(answer.ok && answer.mm).toBeCloseTo(mm, 10);
});

const refused: readonly (readonly [text: string, problem: RegExp])[] = [
  ['', /Type a length/],
  ['   ', /Type a length/],
  ['1-5/8', /"1 5\/8" or "1 - 5\/8"/],
  ['1,625', /1\.625 or 1625/],
  ['2*', /missing at the end/],
  ['2 3', /"3" is not understood/],
  ['4 furlongs', /"furlongs" is not a unit/],
  ['toString', /not understood/],
  ['5 constructor', /not a unit/],
  ['1/0', /zero/],
  ['1/(2-2)', /zero/],
  ['2 mm * 3 mm', /area/],
  ['1.5 / 3 mm', /no length/],
  ['(2 mm) in', /unit already/],
  ['(2', /closing bracket/],
  ['2)', /"\)" is not understood/],
  ['1e3', /"e" is not a unit/],
  ['999999', /hundred metres/],
  ['1..2', /not understood/],
  ['1'.repeat(201), /200 characters/],
];

test.each(refused)('%j is refused in words', (text, problem) => {
  const answer = parseLength(text, 'mm');
  expect(answer.ok).toBe(false);
  expect(answer.ok ? '' : answer.problem).toMatch(problem);
});

test('a fraction before a unit is a fraction of it', () => {
  const answer = parseLength('2 / 3 mm', 'in');
  expect(answer.ok && answer.mm).toBeCloseTo(2 / 3, 12);
});

test('no text makes it throw, seed 425', () => {
  const signs = fc.string({ unit: fc.constantFrom(...'0123456789 .,+-*/()"\'⅝minft'), maxLength: 30 });
  fc.assert(
    fc.property(fc.oneof(signs, fc.string()), (text) => {
      const answer = parseLength(text, 'mm');
      expect(answer.ok ? Number.isFinite(answer.mm) : answer.problem.length > 0).toBe(true);
    }),
    { seed: 425, numRuns: 2000 },
  );
});

describe('shown', () => {
  test.each([
    [42.4, 'mm', undefined, '42.40 mm'],
    [42.4, 'in', undefined, '1.669 in'],
    [820, 'mm', 0, '820 mm'],
    [-0.001, 'mm', 2, '0.00 mm'],
    [-1.25, 'mm', 1, '-1.3 mm'],
  ] as const)('%d mm in %s with %s digits: %s', (mm, display, digits, text) => {
    expect(formatLength(mm, display, digits)).toBe(text);
  });

  test('number and unit apart', () => {
    expect(lengthParts(25.4, 'in', 1)).toEqual({ number: '1.0', unit: 'in' });
  });

  test('angles', () => {
    expect(formatAngle(22.5)).toBe('22.5°');
    expect(formatAngle(-0.01)).toBe('0.0°');
    expect(formatAngle(33.33333, 3)).toBe('33.333°');
  });

  test('a length shown with enough digits reads back, seed 426', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -9e4, max: 9e4, noNaN: true }),
        fc.constantFrom('mm' as const, 'in' as const),
        (mm, display) => {
          const answer = parseLength(formatLength(mm, display, 8), 'mm');
          expect(answer.ok && Math.abs(answer.mm - mm)).toBeLessThan(1e-6);
        },
      ),
      { seed: 426, numRuns: 300 },
    );
  });
});
