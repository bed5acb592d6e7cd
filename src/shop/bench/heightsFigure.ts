/**
 * The tube lying by itself on a flat plate, seen from the side: how high its underside stands, measured from the plate. To scale.
 * mm
 */
import { distance } from '../../../geometry';
import type { Vec3 } from '../../../shared/vec3';
import type { Item, Point } from '../../formats/drawing/drawing';
import { line, polyline, text } from '../../formats/drawing/items';
import { textWidth } from '../../formats/drawing/textWidth';
import type { CheckHeights } from '../making/report';
import { AXIS, CUT, EDGE, THIN, TYPE } from '../sheet/style';
import { spread } from './spread';

/** How high a tube is drawn at most: usually, and where a sheet would else not hold all. */
export const DRAWN = { usual: 22, low: 11 } as const;
const LEAST_HEIGHT = 8;
/** Beneath the plate: what is measured where, and how high. */
const BENEATH = 13;
/** Between the margins of the narrower paper: its height must be known before its width is. */
const USUAL_WIDTH = 190;

/** @param places of the heights along `points`, as shares of the tube's length */
export function heightsFigure(
  { heights, points }: CheckHeights,
  radius: number,
  places: readonly number[],
  say: (mm: number) => string,
  most: number,
) {
  const flat = sideOn(points);
  const [us, vs] = [flat.map(([u]) => u), flat.map(([, v]) => v)];
  const [low, high] = [Math.min(...us) - radius, Math.max(...us) + radius];
  const tall = Math.max(...vs) + radius;
  const scaleFor = (width: number): number => Math.min((width - 8) / (high - low), most / tall);
  const height = (width: number): number => Math.max(LEAST_HEIGHT, tall * scaleFor(width));
  return {
    height: height(USUAL_WIDTH) + BENEATH + 3.5,
    at: ([left, top]: Point, width: number): Item[] => {
      const scale = scaleFor(width);
      const from = left + (width - scale * (high - low)) / 2;
      const plate = top + 2 + height(USUAL_WIDTH);
      const at = ([u, v]: Point): Point => [from + scale * (u - low), plate - scale * v];
      const middle = flat.map(at);
      const sides = [1, -1].map((side) => offset(middle, side * radius * scale));
      const feet = heights.map((_, i): Point => middle[indexAt(points, places[i] ?? 0)]!);
      const words = heights.map((h) => [h.at === 'start' || h.at === 'end' ? h.at : `bend ${h.at}`, say(h.height)]);
      const middles = spread(
        feet.map(([x], i) => ({ at: x, width: Math.max(...words[i]!.map((w) => textWidth(w, TYPE.number, true))) })),
        left,
        left + width,
        2.5,
      );
      return [
        line([left, plate], [left + width, plate], CUT),
        ...sides.map((side) => polyline(side, EDGE)),
        ...[0, -1].map((i) => line(sides[0]!.at(i)!, sides[1]!.at(i)!, EDGE)),
        polyline(middle, AXIS),
        ...feet.flatMap(([x, y], i) => [
          line([x, Math.min(y + radius * scale, plate)], [x, plate], THIN),
          line([x, plate], [middles[i]!, plate + 3.2], THIN),
          text(words[i]![0]!, [middles[i]!, plate + 6.6], TYPE.plain, { anchor: 'middle' }),
          text(words[i]![1]!, [middles[i]!, plate + 11.6], TYPE.number, { anchor: 'middle', bold: true }),
        ]),
      ];
    },
  };
}

/** Along the straight from its start to its end, as seen from above; whatever way it is longest where it is closed. */
function sideOn(points: readonly Vec3[]): Point[] {
  const [a, b] = [points[0]!, points.at(-1)!];
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = length > 1e-6 ? [dx / length, dy / length] : [1, 0];
  return points.map(([x, y, z]) => [(x - a[0]) * ux + (y - a[1]) * uy, z]);
}

/** Beside a line, square to it. */
const offset = (middle: readonly Point[], by: number): Point[] =>
  middle.map(([x, y], i) => {
    const [p, q] = [middle[Math.max(0, i - 1)]!, middle[Math.min(middle.length - 1, i + 1)]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return length > 0 ? [x - (by * (q[1] - p[1])) / length, y + (by * (q[0] - p[0])) / length] : [x, y + by];
  });

/** @returns the index of the point nearest to a share of the whole length */
function indexAt(points: readonly Vec3[], share: number): number {
  const reached = [0];
  for (const [i, p] of points.slice(1).entries()) reached.push(reached[i]! + distance(points[i]!, p));
  const wanted = share * reached.at(-1)!;
  return reached.reduce((best, s, i) => (Math.abs(s - wanted) < Math.abs(reached[best]! - wanted) ? i : best), 0);
}
