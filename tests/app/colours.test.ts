/** The look, measured. WCAG 2.2: text 4.5:1 (1.4.3), marks and controls 3:1 (1.4.11); colour blindness as in eyes.ts. */
import { describe, expect, it } from 'vitest';
import { PAINT_COUNT, paintOf } from '../../src/app/colours';
import { contrast, mix } from '../../src/app/contrast';
import { BEND_SHARE, STRAIGHT_SHARE } from '../../src/app/rack/shades';
import { type Theme, TOKENS } from '../../src/app/theme';
import { apart, EYES, seen } from './eyes';

const THEMES: Theme[] = ['light', 'dark'];
const SURFACES = ['paper', 'sheet', 'well'] as const;
const paints = (theme: Theme) => Array.from({ length: PAINT_COUNT }, (_, i) => paintOf(i, theme));

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
