/** Numbers in fields: what is typed, what is shown, what is refused and how, and what the arrow keys do. */
import { describe, expect, it } from 'vitest';
import { BEND_ANGLE, DISTANCE, INLETS, LENGTH, narrowed } from '../../../shared/design/ranges';
import { rangeWords, readQuantity, showQuantity, stepQuantity } from '../../../src/app/inspect/fields/quantity';
import { random } from '../../random';

describe('reading', () => {
  it.each([
    ['1 5/8', 'in', 41.275],
    ['1 5/8 in', 'mm', 41.275],
    ['2*42.4+4', 'mm', 88.8],
    ['42.4 mm', 'in', 42.4],
    ['1', 'in', 25.4],
  ] as const)('takes %s with the display in %s as a length', (text, display, mm) => {
    const answer = readQuantity(text, 'length', display);
    expect(answer.ok && answer.value).toBeCloseTo(mm, 12);
  });

  it.each([
    ['90/4', 22.5],
    ['45+7 1/2', 52.5],
    ['−15', -15],
    ['12°', 12],
    ['12 deg', 12],
  ])('takes %s as an angle', (text, degrees) => {
    expect(readQuantity(text, 'angle', 'in')).toEqual({ ok: true, value: degrees });
  });

  it.each(['', '3 in', 'forty', '1/0', '4 4', '1,500'])('refuses %j as a plain number, saying why', (text) => {
    const answer = readQuantity(text, 'plain', 'mm');
    expect(answer.ok).toBe(false);
    expect(!answer.ok && answer.problem.length).toBeGreaterThan(10);
  });

  it('refuses half a cylinder', () => {
    expect(readQuantity('2.5', 'count', 'mm', INLETS)).toEqual({ ok: false, problem: '2.5 is not a whole number.' });
  });

  it('says the range in the display unit', () => {
    const wall = narrowed(LENGTH, { most: 21.2, below: true });
    expect(readQuantity('30', 'length', 'mm', wall)).toEqual({
      ok: false,
      problem: '30 mm is out of range: above 0 mm, less than 21.2 mm.',
    });
    expect(readQuantity('1', 'length', 'in', wall)).toEqual({
      ok: false,
      problem: '1 in is out of range: above 0 in, less than 0.8346 in.',
    });
  });
});

describe('range words', () => {
  it('leaves out limits that only guard the program', () => {
    expect(rangeWords(LENGTH, 'length', 'mm')).toBe('above 0 mm');
    expect(rangeWords(DISTANCE, 'length', 'in')).toBe('0 in or more');
    expect(rangeWords(BEND_ANGLE, 'angle', 'mm')).toBe('above 0°, at most 360°');
    expect(rangeWords(INLETS, 'count', 'mm')).toBe('1 to 16');
  });
});

describe('showing', () => {
  it('shows no trailing zeros and no minus nought', () => {
    expect(showQuantity(42.4, 'length', 'mm')).toBe('42.4');
    expect(showQuantity(50.8, 'length', 'in')).toBe('2');
    expect(showQuantity(-0.0001, 'length', 'mm')).toBe('0');
    expect(showQuantity(100, 'count', 'mm')).toBe('100');
  });

  it('reads back within what it shows, seed 501', () => {
    const next = random(501);
    for (let i = 0; i < 500; i++) {
      const value = next.between(-2000, 2000);
      for (const display of ['mm', 'in'] as const) {
        const answer = readQuantity(showQuantity(value, 'length', display), 'length', display);
        expect(answer.ok).toBe(true);
        // Half of the last decimal shown: 0.0005 mm, or 0.00005 in.
        const half = display === 'mm' ? 0.0005 : 0.00005 * 25.4;
        if (answer.ok) expect(Math.abs(answer.value - value)).toBeLessThanOrEqual(half * 1.000001);
      }
    }
  });
});

describe('stepping', () => {
  it('goes by a millimetre or a sixteenth, ten times or a tenth of it', () => {
    expect(stepQuantity(42.4, 1, 'usual', 'length', 'mm')).toBe(43.4);
    expect(stepQuantity(42.4, -1, 'coarse', 'length', 'mm')).toBe(32.4);
    expect(stepQuantity(42.4, 1, 'fine', 'length', 'mm')).toBe(42.5);
    expect(stepQuantity(25.4, 1, 'usual', 'length', 'in')).toBe(26.9875);
  });

  it('stops at the ends of the range', () => {
    expect(stepQuantity(0.5, -1, 'usual', 'length', 'mm', DISTANCE)).toBe(0);
    expect(stepQuantity(0.5, -1, 'usual', 'length', 'mm', LENGTH)).toBe(0.5);
    expect(stepQuantity(16, 1, 'usual', 'count', 'mm', INLETS)).toBe(16);
    expect(stepQuantity(4, 1, 'fine', 'count', 'mm', INLETS)).toBe(5);
  });
});
