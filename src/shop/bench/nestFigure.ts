/**
 * One bar or bend of stock with what is cut from it, to scale along its middle: bends unrolled, their legs plain, their arc shaded.
 * What is left is crossed out, or kept where it is worth keeping. mm, degrees.
 */
import type { Item, Point } from '../../formats/drawing/drawing';
import { cover, line, rectangle, text } from '../../formats/drawing/items';
import { textWidth } from '../../formats/drawing/textWidth';
import type { UsedStock } from '../making/report';
import { CUT, EDGE, HATCH, THIN, TYPE } from '../sheet/style';
import { bentFrom, type Place, placesOf, stockLength } from '../stockLayout';

const BAND = 7;
const SHADING = 2.2;

/** @param longest of all that stand under one another, so that all have one scale */
export const nestFigure = (used: UsedStock, longest: number) => ({
  height: BAND + 1.5,
  at: ([left, top]: Point, width: number): Item[] => {
    const scale = width / longest;
    const x = (at: number): number => left + scale * at;
    const { of } = used;
    const bottom = top + BAND;
    const arc = bentFrom(of);
    const places = placesOf(used);
    return [
      ...(arc ? shading(x(arc[0]), x(arc[1]), top, bottom) : []),
      ...gaps(places, stockLength(of)).flatMap(([from, to]) => crossed(x(from), x(to), top, bottom)),
      rectangle({ left, top, right: x(stockLength(of)), bottom }, EDGE),
      ...places.flatMap(({ from, to }) => [from, to].map((at) => line([x(at), top], [x(at), bottom], CUT))),
      ...places.flatMap(({ piece, from, to }) => label(piece, x(from), x(to), (top + bottom) / 2)),
    ];
  },
});

function label(words: string, from: number, to: number, middle: number): Item[] {
  const width = textWidth(words, TYPE.plain, true);
  if (width + 1.4 > to - from) return [];
  const at = (from + to) / 2;
  return [
    cover({ left: at - width / 2 - 0.6, right: at + width / 2 + 0.6, top: middle - 2, bottom: middle + 2 }),
    text(words, [at, middle + 1.25], TYPE.plain, { anchor: 'middle', bold: true }),
  ];
}

/** What no piece takes. */
function gaps(places: readonly Place[], length: number): (readonly [number, number])[] {
  const edges = [0, ...places.flatMap(({ from, to }) => [from, to]), length];
  return Array.from({ length: places.length + 1 }, (_, k) => [edges[2 * k]!, edges[2 * k + 1]!] as const);
}

function crossed(from: number, to: number, top: number, bottom: number): Item[] {
  return to - from < 1
    ? []
    : [
        cover({ left: from, right: to, top, bottom }),
        line([from, top], [to, bottom], THIN),
        line([from, bottom], [to, top], THIN),
      ];
}

function shading(from: number, to: number, top: number, bottom: number): Item[] {
  const count = Math.max(1, Math.round((to - from) / SHADING));
  return Array.from({ length: count + 1 }, (_, k) => {
    const at = from + (k * (to - from)) / count;
    return line([at, top], [at, bottom], k === 0 || k === count ? THIN : HATCH);
  });
}
