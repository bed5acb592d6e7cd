/** Numbers as tapes and dials show them, and labels that make room for one another. */
import { describe, expect, test } from 'vitest';
import { wrapText } from '../../../src/formats/drawing/textWidth';
import {
  aroundFigure,
  dialFigure,
  fractionOf,
  inchFraction,
  stepWords,
  tapeFigure,
} from '../../../src/shop/bench/figures';
import { spread } from '../../../src/shop/bench/spread';

const MM = { display: 'mm', tape: 0.5, dial: 0.5 } as const;
const IN = { display: 'in', tape: 25.4 / 32, dial: 1 } as const;

test('millimetres to the tape, degrees to the dial, with the decimals of their steps', () => {
  expect([412.26, 412.24, -0.1, 100].map((mm) => tapeFigure(mm, MM))).toEqual(['412.5', '412.0', '0.0', '100.0']);
  expect(tapeFigure(412.26, { ...MM, tape: 1 })).toBe('412');
  expect(tapeFigure(412.26, { ...MM, tape: 0 })).toBe('412.26');
  expect(dialFigure(-93.89, MM)).toBe('−94.0°');
  expect(dialFigure(15.4, IN)).toBe('15°');
});

test('inches as fractions in lowest terms, no coarser than the tape', () => {
  expect(fractionOf(25.4 / 32)).toBe(32);
  expect(fractionOf(0.79)).toBe(32);
  expect(fractionOf(0.5)).toBe(64);
  expect(fractionOf(0.1)).toBeNull();
  expect([25.4, 12.7, 25.4 * 1.75, 0, -25.4 / 4].map((mm) => inchFraction(mm, 32))).toEqual([
    '1',
    '1/2',
    '1 3/4',
    '0',
    '−1/4',
  ]);
  expect(tapeFigure(25.4 * (16 + 15 / 32) + 0.2, IN)).toBe('16 15/32');
  expect(tapeFigure(25.4 * 0.9999, IN)).toBe('1');
  expect(tapeFigure(2.54, { ...IN, tape: 0.1 })).toBe('0.100');
});

test('every fraction printed is within half a step of what was meant', () => {
  for (let mm = 0; mm < 60; mm += 0.173) {
    const words = tapeFigure(mm, IN);
    const value = words.split(' ').reduce((sum, w) => {
      const [over, under = '1'] = w.split('/');
      return sum + Number(over) / Number(under);
    }, 0);
    expect(Math.abs(value * 25.4 - mm)).toBeLessThanOrEqual(25.4 / 64 + 1e-9);
  }
});

test('steps and lengths round the tube in words', () => {
  expect(stepWords(MM)).toBe('0.5 mm and 0.5°');
  expect(stepWords(IN)).toBe('1/32 in and 1°');
  expect(aroundFigure(-50.52, 'mm')).toBe('−50.5');
  expect(aroundFigure(25.4, 'in')).toBe('1.00');
});

test('labels stand where they belong, or as near as their neighbours and the edges let them', () => {
  expect(spread([{ at: 50, width: 10 }], 0, 100)).toEqual([50]);
  expect(spread([{ at: 1, width: 10 }], 0, 100)).toEqual([5]);
  const close = [49, 50, 51, 90].map((at) => ({ at, width: 10 }));
  const placed = spread(close, 0, 100, 2);
  for (let i = 1; i < placed.length; i++) expect(placed[i]! - placed[i - 1]!).toBeGreaterThanOrEqual(12 - 1e-9);
  expect(placed[1]).toBeCloseTo(50, 9);
  expect(placed[3]).toBe(90);
  // In the order given, not in that along the line.
  const [far, near] = spread(
    [
      { at: 80, width: 10 },
      { at: 20, width: 10 },
    ],
    0,
    100,
  );
  expect([far, near]).toEqual([80, 20]);
});

describe('lines', () => {
  test('a whole inch stays with its fraction, a number with its unit, wherever the line ends', () => {
    const words = 'it spans 23 21/32 and stub 1: 3 9/16, by 1.7 mm of 42.4 mm × 1.5 mm, 24 in long; in 3 inlets';
    for (let width = 12; width < 150; width += 1) {
      const lines = wrapText(words, width, 3.2);
      expect(lines.join(' ')).toBe(words);
      for (const line of lines) {
        expect(line).not.toMatch(/^(21\/32|9\/16|mm\b|in\b long)/);
        expect(line).not.toMatch(/(23|: 3)$/);
      }
    }
    // Words are still broken between.
    expect(wrapText(words, 12, 3.2).length).toBeGreaterThan(10);
  });
});
