/**
 * Closed contours of a grey picture at one level, by marching squares: where the level is crossed is interpolated between
 * the middles of neighbouring pixels, so edges come out far finer than a pixel. px from the top left, y down. The inside lies
 * to one side all along, so a region's edge has positive area and the edge of a gap in it negative. Source: Lorensen and
 * Cline, SIGGRAPH 1987, in the plane; saddles by the mean of their four pixels.
 */
import type { Point2 } from '../plane/loop';
import { type Raster, TraceError } from './raster';

export type Contour = {
  readonly points: readonly Point2[];
  /** px², positive round a region, negative round a gap. */
  readonly area: number;
  /** Runs along the picture's own edge. */
  readonly cut: boolean;
};

/** Beyond this it is no gasket but grain, and would only take long. */
const MOST_POINTS = 6_000_000;

export type ContourOptions = {
  /** 0 to 255. */
  readonly level: number;
  /** Whether the region is what is darker, or what is lighter than the level. */
  readonly dark: boolean;
  /** Contours round less than this are specks, px². */
  readonly speck: number;
};

/** Steps to the next pixel: right, down, left, up. */
const DX = [1, 0, -1, 0] as const;
const DY = [0, 1, 0, -1] as const;

export function contours(raster: Raster, { level, dark, speck }: ContourOptions) {
  const { width, height, data } = raster;
  const sign = dark ? 1 : -1;
  // Positive inside. All round the picture lies its background, so that every contour closes.
  const value = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? -128 : sign * (level - data[y * width + x]!);
  const inside = (x: number, y: number): boolean => value(x, y) > 0;
  const seen = new Uint8Array(width * height);
  const kept: Contour[] = [];
  let [specks, drawn] = [0, 0];

  /** Where the level is crossed between a pixel inside and its neighbour outside, `way` from it. */
  const crossing = (x: number, y: number, way: number): Point2 => {
    const [a, b] = [value(x, y), value(x + DX[way]!, y + DY[way]!)];
    const t = a / (a - b);
    return [x + 0.5 + t * DX[way]!, y + 0.5 + t * DY[way]!];
  };

  const follow = (startX: number, startY: number): Contour => {
    const points: Point2[] = [];
    let [x, y, way] = [startX, startY, 0];
    let [area, cut] = [0, false];
    do {
      if (way === 0) seen[y * width + x] = 1;
      const point = crossing(x, y, way);
      const before = points.at(-1);
      if (before) area += before[0] * point[1] - point[0] * before[1];
      points.push(point);
      if (++drawn > MOST_POINTS)
        throw new TraceError('it is too grainy to trace; blur it a little, or scan it at 300 dpi or less');
      const [ox, oy] = [x + DX[way]!, y + DY[way]!];
      cut ||= ox < 0 || oy < 0 || ox >= width || oy >= height;
      // Ahead lies what is a quarter turn on, clockwise as seen on the picture: beside the pixel inside, and beside the outer one.
      const on = (way + 1) % 4;
      const [ix, iy] = [x + DX[on]!, y + DY[on]!];
      const [fx, fy] = [ox + DX[on]!, oy + DY[on]!];
      const [near, far] = [inside(ix, iy), inside(fx, fy)];
      const joined = near ? far : far && value(x, y) + value(ox, oy) + value(ix, iy) + value(fx, fy) > 0;
      if (joined) [x, y, way] = [fx, fy, (way + 3) % 4];
      else if (near) [x, y] = [ix, iy];
      else way = on;
    } while (x !== startX || y !== startY || way !== 0);
    const [first, last] = [points[0]!, points.at(-1)!];
    area += last[0] * first[1] - first[0] * last[1];
    return { points, area: area / 2, cut };
  };

  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (seen[y * width + x] !== 0 || !inside(x, y) || inside(x + 1, y)) continue;
      const contour = follow(x, y);
      if (Math.abs(contour.area) < speck) specks++;
      else kept.push(contour);
    }
  }
  return { kept, specks };
}

/** Whether most of the picture's rim is lighter than the level: paper, and what lies on it is dark. */
export function lightRim({ width, height, data }: Raster, level: number): boolean {
  let [light, all] = [0, 0];
  const look = (x: number, y: number) => {
    all++;
    if (data[y * width + x]! > level) light++;
  };
  for (let x = 0; x < width; x++) for (const y of [0, height - 1]) look(x, y);
  for (let y = 0; y < height; y++) for (const x of [0, width - 1]) look(x, y);
  return 2 * light >= all;
}
