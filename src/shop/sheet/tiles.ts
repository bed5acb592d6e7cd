/**
 * A true-size drawing cut up into pages that are laid together again by register marks. Neighbours overlap; the marks stand
 * in the middle of the overlap, outside the drawing, on both pages. mm.
 */
import { type Box, heightOf, type Item, type Point, widthOf } from '../../formats/drawing/drawing';
import { group, line, registerMark } from '../../formats/drawing/items';
import { placedTexts } from '../../formats/drawing/textCorners';
import { DASHED, THIN } from './style';

/** Wide enough that the longest mark, CROTCH, is whole on one of two sheets. */
export const OVERLAP = 20;
/** Round a drawing that is cut up, for the marks. */
const MARK_ROOM = 10;

export type Tile = { readonly column: number; readonly row: number; readonly at: (corner: Point) => Item[] } & {
  readonly width: number;
  readonly height: number;
};
export type Tiling = { readonly columns: number; readonly rows: number; readonly tiles: readonly Tile[] };

/** @param window the room that a page has */
export function tiled(items: readonly Item[], box: Box, window: { width: number; height: number }): Tiling {
  const one = widthOf(box) <= window.width && heightOf(box) <= window.height;
  const whole = one ? box : grown(box, MARK_ROOM);
  const across = spans(whole.left, whole.right, window.width);
  const down = spans(whole.top, whole.bottom, window.height);
  const joints = { x: jointsOf(across), y: jointsOf(down) };
  const marks = [
    ...joints.x.flatMap((x) => [
      line([x, whole.top], [x, whole.top + MARK_ROOM], DASHED),
      line([x, whole.bottom - MARK_ROOM], [x, whole.bottom], DASHED),
      ...registerMark([x, whole.top + MARK_ROOM / 2], THIN),
      ...registerMark([x, whole.bottom - MARK_ROOM / 2], THIN),
    ]),
    ...joints.y.flatMap((y) => [
      line([whole.left, y], [whole.left + MARK_ROOM, y], DASHED),
      line([whole.right - MARK_ROOM, y], [whole.right, y], DASHED),
      ...registerMark([whole.left + MARK_ROOM / 2, y], THIN),
      ...registerMark([whole.right - MARK_ROOM / 2, y], THIN),
    ]),
  ];
  const tiles = down.flatMap(([top, bottom], row) =>
    across.map(([left, right], column): Tile => {
      const part = { left, top, right, bottom };
      return {
        column,
        row,
        width: right - left,
        height: bottom - top,
        at: ([x, y]) => {
          const clip = { left: x, top: y, right: x + right - left, bottom: y + bottom - top };
          return [
            group([x - left, y - top], [...(one ? items : legible(items, part)), ...marks], one ? undefined : clip),
          ];
        },
      };
    }),
  );
  return { columns: across.length, rows: down.length, tiles };
}

const grown = (b: Box, by: number): Box => ({
  left: b.left - by,
  top: b.top - by,
  right: b.right + by,
  bottom: b.bottom + by,
});

/** Equal pieces of a length, each as long as it may be or shorter, neighbours overlapping. */
function spans(from: number, to: number, most: number): (readonly [number, number])[] {
  const length = to - from;
  const count = length <= most ? 1 : Math.ceil((length - OVERLAP) / (most - OVERLAP));
  const piece = (length + (count - 1) * OVERLAP) / count;
  return Array.from({ length: count }, (_, i) => {
    const start = from + i * (piece - OVERLAP);
    return [start, start + piece] as const;
  });
}

const jointsOf = (parts: readonly (readonly [number, number])[]): number[] =>
  parts.slice(1).map(([start]) => start + OVERLAP / 2);

/** No half words at a page's edge: a text, or a group with one in it, is on the page wholly or not at all. */
function legible(items: readonly Item[], box: Box): Item[] {
  return items.filter((item) => placedTexts(item).every(({ corners }) => corners.every((p) => inside(p, box))));
}

const inside = ([x, y]: Point, { left, right, top, bottom }: Box): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;
