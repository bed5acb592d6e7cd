/**
 * The colour of the room round a tube: one way from roomy, near the page's own grey, to tight; what is nearer than it may be
 * has the colour of what fails. Lightness goes one way only, so that it reads without hue; blue, because every eye tells that
 * from what fails (tests/app/room/ramp).
 */
import { linearRgb, type Rgb } from '../contrast';
import { type Theme, TOKENS } from '../theme';

/** Room beyond what is required from which a tube counts as free, mm. */
export const ROOMY = 25;

/** From no room to spare to `ROOMY`, evenly. */
export const RAMP: Readonly<Record<Theme, readonly string[]>> = {
  light: ['#1b3358', '#3d6390', '#7597b8', '#b0c0ca', '#e6e3da'],
  dark: ['#e9f3fc', '#a6c8e8', '#6c96c0', '#47698b', '#363f48'],
};

const LINEAR = Object.fromEntries(
  (['light', 'dark'] as const).map((theme) => [theme, RAMP[theme].map(linearRgb)]),
) as unknown as Readonly<Record<Theme, readonly Rgb[]>>;
const FAILS = { light: linearRgb(TOKENS.light.fail), dark: linearRgb(TOKENS.dark.fail) };

/** Linear colour of a margin, mm. */
export function rampColour(margin: number, theme: Theme): Rgb {
  if (margin < 0) return FAILS[theme];
  const stops = LINEAR[theme];
  const at = Math.min(1, margin / ROOMY) * (stops.length - 1);
  const i = Math.min(stops.length - 2, Math.floor(at));
  const [a, b] = [stops[i]!, stops[i + 1]!];
  const t = at - i;
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** The same as a style for a legend. */
export const rampCss = (theme: Theme): string => `linear-gradient(to right, ${RAMP[theme].join(', ')})`;
