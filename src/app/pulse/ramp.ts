/**
 * The colours of the picture: from a quiet middle, which is the value at rest, to straw and dark bronze above and to blue below.
 * Equal differences of value are equal differences of colour in Oklab (Ottosson, 2020; constants from memory), the same on both
 * sides; lightness goes one way along each arm, so that it is read without colour too. Held by tests/app/pulse/ramp.
 *
 * What fills a frame begins at the sheet's own tone. A tube in the 3D view stands alone before the ground: it begins at a grey that no
 * ground swallows.
 */
import type { Theme } from '../colours';

type Lch = readonly [lightness: number, chroma: number, hue: number];
type Lab = readonly [number, number, number];
type Arm = { readonly half: Lch; readonly end: Lch };

/** What the colours lie on: a frame on the sheet that they fill, or the 3D view. */
export type RampOn = 'frame' | 'view';

type Ramp = { readonly middle: Lch; readonly above: Arm; readonly below: Arm };

const RAMPS: Readonly<Record<RampOn, Readonly<Record<Theme, Ramp>>>> = {
  frame: {
    light: {
      middle: [0.965, 0.006, 85],
      above: { half: [0.72, 0.115, 68], end: [0.36, 0.1, 35] },
      below: { half: [0.7, 0.105, 245], end: [0.36, 0.13, 275] },
    },
    dark: {
      middle: [0.25, 0.006, 255],
      above: { half: [0.57, 0.105, 52], end: [0.92, 0.105, 92] },
      below: { half: [0.55, 0.125, 260], end: [0.9, 0.075, 215] },
    },
  },
  view: {
    light: {
      middle: [0.82, 0.006, 85],
      above: { half: [0.66, 0.12, 62], end: [0.35, 0.1, 35] },
      below: { half: [0.63, 0.12, 248], end: [0.35, 0.13, 275] },
    },
    dark: {
      middle: [0.53, 0.006, 255],
      above: { half: [0.71, 0.115, 62], end: [0.92, 0.1, 92] },
      below: { half: [0.69, 0.12, 248], end: [0.9, 0.07, 215] },
    },
  },
};

/** Steps from the middle to either end. */
export const ARM = 256;
/** Entries of a table of colours; the middle is entry ARM. */
export const SHADES = 2 * ARM + 1;

const labOf = ([l, c, h]: Lch): Lab => [l, c * Math.cos((h * Math.PI) / 180), c * Math.sin((h * Math.PI) / 180)];

/** Linear sRGB, not yet kept within 0 to 1. */
export function linearOf([l, a, b]: Lab): readonly [number, number, number] {
  const x = (l + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const y = (l - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const z = (l - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    4.0767416621 * x - 3.3077115913 * y + 0.2309699292 * z,
    -1.2684380046 * x + 2.6097574011 * y - 0.3413193965 * z,
    -0.0041960863 * x - 0.7034186147 * y + 1.707614701 * z,
  ];
}

const encode = (linear: number): number => {
  const c = Math.min(1, Math.max(0, linear));
  return Math.round(255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055));
};

/** A curve through three colours, as so many places on it and how far each lies along it. */
function traced(middle: Lab, { half, end }: Arm): { readonly at: readonly Lab[]; readonly along: readonly number[] } {
  const [p, q, r] = [middle, labOf(half), labOf(end)];
  const at: Lab[] = [];
  const along: number[] = [];
  const FINE = 20_000;
  for (let k = 0; k <= FINE; k++) {
    const t = k / FINE;
    const [wp, wq, wr] = [(1 - t) * (1 - 2 * t), 4 * t * (1 - t), t * (2 * t - 1)];
    at.push([0, 1, 2].map((i) => wp * p[i]! + wq * q[i]! + wr * r[i]!) as unknown as Lab);
    const [now, last] = [at[k]!, at[k - 1] ?? at[k]!];
    along.push((along[k - 1] ?? 0) + Math.hypot(now[0] - last[0], now[1] - last[1], now[2] - last[2]));
  }
  return { at, along };
}

/** Colours in Oklab from the lowest to the highest value. */
export function rampLab(theme: Theme, on: RampOn = 'frame'): readonly Lab[] {
  const { middle, above, below } = RAMPS[on][theme];
  const centre = labOf(middle);
  const [up, down] = [traced(centre, above), traced(centre, below)];
  // Both as long as the shorter one: a colour's distance from the middle then means the same either way.
  const length = Math.min(up.along.at(-1)!, down.along.at(-1)!);
  const evenly = ({ at, along }: typeof up): Lab[] => {
    let k = 0;
    return Array.from({ length: ARM }, (_, step) => {
      const wanted = (length * (step + 1)) / ARM;
      while (k < along.length - 1 && along[k]! < wanted - 1e-12) k++;
      return at[k]!;
    });
  };
  return [...evenly(down).reverse(), centre, ...evenly(up)];
}

export type Shade = readonly [red: number, green: number, blue: number];

const made = new Map<string, readonly Shade[]>();

/** sRGB from the lowest to the highest value, 0 to 255. */
export function ramp(theme: Theme, on: RampOn = 'frame'): readonly Shade[] {
  const key = `${on} ${theme}`;
  const known = made.get(key) ?? rampLab(theme, on).map((lab) => linearOf(lab).map(encode) as unknown as Shade);
  made.set(key, known);
  return known;
}

/** The entry for a value: the middle at `middle`, the ends at `half` from it and beyond. */
export const shadeAt = (value: number, middle: number, half: number): number =>
  Math.round(ARM * (1 + Math.min(1, Math.max(-1, (value - middle) / half))));
