/**
 * Pictures of known shapes: each pixel takes the share of it that is covered, by 8 × 8 samples, between the two shades; then
 * noise from a seed. Independent of the tracer: it asks only whether a point lies in the shape. mm, y up.
 */
import type { Raster } from '../../../geometry';
import { random } from '../../random';

export type Shape = (x: number, y: number) => boolean;

export type Drawing = {
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly dpi: number;
  readonly shape: Shape;
  readonly dark?: number;
  readonly light?: number;
  /** Standard deviation, in levels. */
  readonly noise?: number;
  readonly seed?: number;
};

const FINE = 8;

export function drawn({ width, height, dpi, shape, dark = 40, light = 225, noise = 0, seed = 1 }: Drawing): Raster {
  const pixel = 25.4 / dpi;
  const [w, h] = [Math.round(width / pixel), Math.round(height / pixel)];
  const data = new Uint8Array(w * h);
  const chance = random(seed);
  for (let j = 0; j < h; j++) {
    for (let i = 0; i < w; i++) {
      let covered = 0;
      const at = (a: number, b: number) => shape((i + a) * pixel, (h - j - b) * pixel);
      // Most pixels lie wholly on one side: their corners tell, as shapes here have nothing finer than a pixel.
      const corners = [at(0, 0), at(1, 0), at(0, 1), at(1, 1), at(0.5, 0.5)].filter(Boolean).length;
      if (corners === 5) covered = FINE * FINE;
      else if (corners > 0)
        for (let b = 0; b < FINE; b++)
          for (let a = 0; a < FINE; a++) if (at((a + 0.5) / FINE, (b + 0.5) / FINE)) covered++;
      const shade = light + ((dark - light) * covered) / (FINE * FINE);
      data[j * w + i] = Math.max(0, Math.min(255, Math.round(shade + noise * normal(chance))));
    }
  }
  return { width: w, height: h, data };
}

const normal = (chance: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

export const disc =
  (cx: number, cy: number, r: number): Shape =>
  (x, y) =>
    (x - cx) ** 2 + (y - cy) ** 2 < r * r;

export const roundedRectangle =
  (cx: number, cy: number, w: number, h: number, r: number): Shape =>
  (x, y) => {
    const [dx, dy] = [Math.abs(x - cx) - w / 2 + r, Math.abs(y - cy) - h / 2 + r];
    return dx <= 0 || dy <= 0 ? Math.max(dx, dy) < r : dx * dx + dy * dy < r * r;
  };

/** Points within `r` of a bar from a to b. */
export const bar =
  (ax: number, ay: number, bx: number, by: number, r: number): Shape =>
  (x, y) => {
    const [dx, dy] = [bx - ax, by - ay];
    const t = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    return (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2 < r * r;
  };

export const any =
  (...shapes: readonly Shape[]): Shape =>
  (x, y) =>
    shapes.some((s) => s(x, y));

export const without =
  (whole: Shape, ...gaps: readonly Shape[]): Shape =>
  (x, y) =>
    whole(x, y) && !gaps.some((g) => g(x, y));

/** The shape turned about a point, degrees to the left. */
export const turned =
  (shape: Shape, degrees: number, cx: number, cy: number): Shape =>
  (x, y) => {
    const a = (-degrees * Math.PI) / 180;
    const [dx, dy] = [x - cx, y - cy];
    return shape(cx + dx * Math.cos(a) - dy * Math.sin(a), cy + dx * Math.sin(a) + dy * Math.cos(a));
  };
