/** What drawings are put together from, in few words: lines, circles, arcs, areas, rectangles, arrow heads, text. mm. */
import type { OutlineVertex } from '../../../shared/design/types';
import type { Box, Curve, Group, Item, Point, Stroke, Text } from './drawing';

type Named = { readonly name?: string };

const bulgeOf = (turn: number): number => Math.tan(turn / 4);

export const polyline = (points: readonly Point[], stroke: Stroke, more: Named = {}): Curve => ({
  kind: 'curve',
  vertices: points.map(([x, y]) => [x, y, 0]),
  closed: false,
  stroke,
  ...more,
});

export const line = (from: Point, to: Point, stroke: Stroke, more: Named = {}): Curve =>
  polyline([from, to], stroke, more);

export const outline = (vertices: readonly OutlineVertex[], stroke: Stroke, more: Named = {}): Curve => ({
  kind: 'curve',
  vertices,
  closed: true,
  stroke,
  ...more,
});

export const circle = ([x, y]: Point, radius: number, stroke: Stroke, more: Named = {}): Curve =>
  outline(
    [
      [x + radius, y, 1],
      [x - radius, y, 1],
    ],
    stroke,
    more,
  );

/** From angle `start` over `turn`, radians, from x to y. As two pieces, so that half circles and more are no special case. */
export function arc(
  [x, y]: Point,
  radius: number,
  start: number,
  turn: number,
  stroke: Stroke,
  more: Named = {},
): Curve {
  const at = (k: number): OutlineVertex => {
    const a = start + (k * turn) / 2;
    return [x + radius * Math.cos(a), y + radius * Math.sin(a), bulgeOf(turn / 2)];
  };
  return { kind: 'curve', vertices: [at(0), at(1), at(2)], closed: false, stroke, ...more };
}

/** Filled, without an edge. */
export const area = (points: readonly Point[], fill: 'black' | 'white' = 'black'): Curve => ({
  kind: 'curve',
  vertices: points.map(([x, y]) => [x, y, 0]),
  closed: true,
  fill,
});

const corners = ({ left, top, right, bottom }: Box): Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];

export const rectangle = (box: Box, stroke: Stroke, more: Named = {}): Curve => ({
  ...polyline(corners(box), stroke, more),
  closed: true,
});

export const cover = (box: Box): Curve => area(corners(box), 'white');

export const text = (
  words: string,
  at: Point,
  size: number,
  { anchor = 'start', bold = false, turn = 0 }: Partial<Pick<Text, 'anchor' | 'bold' | 'turn'>> = {},
): Text => ({ kind: 'text', text: words, at, size, anchor, bold, turn });

export const group = (move: Point, items: readonly Item[], clip?: Box): Group => ({
  kind: 'group',
  move,
  items,
  ...(clip && { clip }),
});

/** A slim filled head, its tip at `tip`, pointing along `angle` (radians, from x to y). */
export function arrowHead(tip: Point, angle: number, length: number): Curve {
  const back = (side: number): Point => [
    tip[0] - length * Math.cos(angle) + side * Math.sin(angle),
    tip[1] - length * Math.sin(angle) - side * Math.cos(angle),
  ];
  return area([tip, back(length / 6), back(-length / 6)]);
}

/** A cross in a circle, as printers' register marks are: its middle is the place. */
export const registerMark = (at: Point, stroke: Stroke, reach = 4): Item[] => [
  line([at[0] - reach, at[1]], [at[0] + reach, at[1]], stroke),
  line([at[0], at[1] - reach], [at[0], at[1] + reach], stroke),
  circle(at, reach / 2, stroke),
];
