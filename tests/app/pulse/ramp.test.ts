/** The picture's colours, measured: even, told apart by every eye, readable by lightness alone, and what a screen can show. */
import { describe, expect, it } from 'vitest';
import { contrast } from '../../../src/app/contrast';
import { ARM, linearOf, type RampOn, ramp, rampLab, SHADES, shadeAt } from '../../../src/app/pulse/ramp';
import { type Theme, TOKENS } from '../../../src/app/theme';
import { apart, EYES, seen } from '../eyes';

const hex = (shade: readonly number[]) => `#${shade.map((c) => c.toString(16).padStart(2, '0')).join('')}`;
const THEMES: Theme[] = ['light', 'dark'];

const ALL = (['frame', 'view'] as const).flatMap((on) => THEMES.map((theme): [RampOn, Theme] => [on, theme]));

describe.each(ALL)('the colours of a %s in the %s theme', (on, theme) => {
  const lab = rampLab(theme, on);
  const shades = ramp(theme, on).map(hex);

  it('are so many, and all within what a screen shows', () => {
    expect(lab).toHaveLength(SHADES);
    for (const colour of lab)
      for (const part of linearOf(colour)) {
        expect(part).toBeGreaterThan(-0.002);
        expect(part).toBeLessThan(1.002);
      }
  });

  it('are even: each step is as far from the next in Oklab as any other, on both sides of the middle', () => {
    const steps = lab.slice(1).map((colour, k) => apart(colour, lab[k]!));
    const mean = steps.reduce((a, b) => a + b) / steps.length;
    for (const step of steps) expect(Math.abs(step / mean - 1)).toBeLessThan(0.03);
    // Over eighths, where the grid they are found on no longer counts.
    const eighth = ARM / 4;
    const sums = Array.from({ length: 8 }, (_, k) => steps.slice(k * eighth, (k + 1) * eighth).reduce((a, b) => a + b));
    expect(Math.max(...sums) / Math.min(...sums)).toBeLessThan(1.002);
  });

  it('go one way in lightness along each arm, from the middle to an end that stands out from it', () => {
    const way = theme === 'light' ? -1 : 1;
    for (let k = 1; k <= ARM; k++)
      for (const side of [1, -1])
        expect(way * (lab[ARM + side * k]![0] - lab[ARM + side * (k - 1)]![0]), `${side * k}`).toBeGreaterThan(0);
    // A tube's middle has left the ground on the way that the arms go on: less is left to its ends.
    const least = on === 'frame' ? 6 : 4;
    for (const end of [shades[0]!, shades.at(-1)!]) expect(contrast(end, shades[ARM]!)).toBeGreaterThan(least);
  });

  it.each(Object.keys(EYES))('tell above from below to eyes with %s vision, from a quarter of the way on', (eye) => {
    for (let k = ARM / 4; k <= ARM; k += 16) {
      const [above, below] = [seen(shades[ARM + k]!, EYES[eye]!), seen(shades[ARM - k]!, EYES[eye]!)];
      // 0.02 in Oklab is just noticeable side by side.
      expect(apart(above, below), `${k}`).toBeGreaterThan(0.06);
    }
  });
});

it.each(THEMES)('in a frame of the %s theme the middle is nearly the sheet it lies on', (theme) => {
  const middle = hex(ramp(theme)[ARM]!);
  expect(apart(seen(middle, EYES.usual!), seen(TOKENS[theme].sheet, EYES.usual!))).toBeLessThan(0.05);
});

// A tube in the light is shaded and inked besides. In the dark neither helps: there it takes the 3 to 1 that WCAG 2.2, 1.4.11, asks of graphics.
it.each([
  ['light', 1.5],
  ['dark', 3],
] as const)('in the 3D view of the %s theme no tube sinks into the ground', (theme, least) => {
  for (const shade of ramp(theme, 'view')) expect(contrast(hex(shade), TOKENS[theme].paper)).toBeGreaterThan(least);
});

it('a value finds its colour: the middle in the middle, the ends at the half-width and beyond', () => {
  expect(shadeAt(101, 101, 50)).toBe(ARM);
  expect(shadeAt(151, 101, 50)).toBe(SHADES - 1);
  expect(shadeAt(1e9, 101, 50)).toBe(SHADES - 1);
  expect(shadeAt(51, 101, 50)).toBe(0);
  expect(shadeAt(-1e9, 101, 50)).toBe(0);
  expect(shadeAt(126, 101, 50)).toBe(ARM + ARM / 2);
});
