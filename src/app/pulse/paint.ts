/** One pipe's waves as pixels: x to the right, time upward from the bottom row. What the run has not come to stays clear. */

import type { Theme } from '../colours';
import type { Quantity } from './quantities';
import { ramp, SHADES, shadeAt } from './ramp';
import { between, extentOf, type Picture } from './sample';

export type Pixels = { readonly width: number; readonly height: number; readonly rgba: Uint8ClampedArray<ArrayBuffer> };

/** Middle and half-width of the colours, SI units. */
export type ColourScale = { readonly middle: number; readonly half: number };

/** @param duration the time that the whole height stands for, s */
export function paintPipe(
  picture: Picture,
  rows: number,
  pipe: number,
  quantity: Quantity,
  { middle, half }: ColourScale,
  duration: number,
  theme: Theme,
  width: number,
  height: number,
): Pixels {
  const rgba = new Uint8ClampedArray(width * height * 4);
  const of = picture.pipes[pipe]!;
  const values = of[quantity];
  const cells = of.x.length;
  const [from, to] = extentOf(of);
  const shades = ramp(theme);
  const columns = Array.from({ length: width }, (_, i) => between(of.x, from + ((i + 0.5) / width) * (to - from)));
  const end = rows > 0 ? picture.times[rows - 1]! : -1;
  // Half a pixel of grace: the last row of a whole run reaches the top.
  const reached = end + duration / height / 2;
  for (let j = 0; j < height; j++) {
    const time = ((height - j - 0.5) / height) * duration;
    if (time > reached) continue;
    const row = between(picture.times, time, rows);
    const [below, above] = [row.low * cells, row.high * cells];
    for (let i = 0; i < width; i++) {
      const { low, high, share } = columns[i]!;
      const first = values[below + low]! * (1 - share) + values[below + high]! * share;
      const second = values[above + low]! * (1 - share) + values[above + high]! * share;
      const shade = shades[Math.min(SHADES - 1, shadeAt(first + (second - first) * row.share, middle, half))];
      // What is no number has no colour.
      if (!shade) continue;
      const at = 4 * (j * width + i);
      rgba[at] = shade[0];
      rgba[at + 1] = shade[1];
      rgba[at + 2] = shade[2];
      rgba[at + 3] = 255;
    }
  }
  return { width, height, rgba };
}
