/**
 * The look, measured. WCAG 2.2: text 4.5:1 (1.4.3), marks and controls 3:1 (1.4.11). Colour blindness after the matrices
 * of Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color vision deficiency", IEEE
 * TVCG 15(6), 2009, severity 1.0; distances in Oklab (Ottosson, 2020). Constants from memory.
 */
import { describe, expect, it } from 'vitest';
import { PAINT_COUNT, paintOf } from '../../src/app/colours';
import { contrast, linearRgb, mix, type Rgb } from '../../src/app/contrast';
import { BEND_SHARE, STRAIGHT_SHARE } from '../../src/app/rack/shades';
import { type Theme, TOKENS } from '../../src/app/theme';

const THEMES: Theme[] = ['light', 'dark'];
const SURFACES = ['paper', 'sheet', 'well'] as const;
const paints = (theme: Theme) => Array.from({ length: PAINT_COUNT }, (_, i) => paintOf(i, theme));

type Matrix = readonly [Rgb, Rgb, Rgb];
const EYES: Record<string, Matrix> = {
  usual: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const times = (m: Matrix, v: Rgb): Rgb => m.map((r) => r[0] * v[0] + r[1] * v[1] + r[2] * v[2]) as unknown as Rgb;

function seen(hex: string, eye: Matrix): Rgb {
  const light = times(eye, linearRgb(hex)).map((c) => Math.min(1, Math.max(0, c))) as unknown as Rgb;
  const lms = times(
    [
      [0.4122214708, 0.5363325363, 0.0514459929],
      [0.2119034982, 0.6806995451, 0.1073969566],
      [0.0883024619, 0.2817188376, 0.6299787005],
    ],
    light,
  ).map(Math.cbrt) as unknown as Rgb;
  return times(
    [
      [0.2104542553, 0.793617785, -0.0040720468],
      [1.9779984951, -2.428592205, 0.4505937099],
      [0.0259040371, 0.7827717662, -0.808675766],
    ],
    lms,
  );
}

const apart = (a: Rgb, b: Rgb) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('contrast itself', () => {
  it('is 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#a37c12', '#a37c12')).toBe(1);
  });
});

describe.each(THEMES)('the %s theme', (theme) => {
  const token = TOKENS[theme];

  it.each(SURFACES)('reads on %s', (surface) => {
    for (const text of ['ink', 'quiet', 'accent', 'fail'] as const)
      expect(contrast(token[text], token[surface]), text).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token.edge, token[surface]), 'edge').toBeGreaterThanOrEqual(3);
  });

  it('reads on its buttons and badges', () => {
    expect(contrast(token.onStrong, token.strong)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token.onAccent, token.accent)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(token.onFail, token.fail)).toBeGreaterThanOrEqual(4.5);
  });

  it('keeps every runner visible on every surface', () => {
    for (const { name, colour } of paints(theme))
      for (const surface of SURFACES)
        expect(contrast(colour, token[surface]), `${name} on ${surface}`).toBeGreaterThanOrEqual(3);
  });

  it('keeps text readable on straights and bends', () => {
    for (const { name, colour } of paints(theme))
      for (const share of [STRAIGHT_SHARE, BEND_SHARE])
        expect(contrast(token.ink, mix(colour, token.sheet, share)), name).toBeGreaterThanOrEqual(4.5);
  });

  it.each(Object.keys(EYES))('keeps the runners apart to eyes with %s vision', (eye) => {
    // 0.1 in Oklab is several times what is just noticeable side by side (about 0.02).
    const all = paints(theme).map((p) => ({ name: p.name, at: seen(p.colour, EYES[eye]!) }));
    for (const [i, a] of all.entries())
      for (const b of all.slice(0, i)) expect(apart(a.at, b.at), `${a.name} and ${b.name}`).toBeGreaterThan(0.1);
  });
});

describe('dashes', () => {
  it('tell every runner from the others without colour, and no pair repeats early', () => {
    const dashes = paints('light').map((p) => p.dash.join());
    expect(new Set(dashes).size).toBe(PAINT_COUNT);
    const pairs = Array.from({ length: 64 }, (_, i) => paintOf(i, 'light')).map((p) => `${p.name} ${p.dash.join()}`);
    expect(new Set(pairs).size).toBe(64);
  });
});
