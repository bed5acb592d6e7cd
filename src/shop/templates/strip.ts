/**
 * The paper that is wrapped round a tube to mark a cut, drawn true size: printed side out, scrap up, angles growing to the
 * right. Its frame: x from the seam, y down from the paper's lower edge, mm.
 */
import { type Extremes, extremes, type WrapCut } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { Box, Item, Point } from '../../formats/drawing/drawing';
import { arrowHead, cover, group, line, polyline, text } from '../../formats/drawing/items';
import { textWidth } from '../../formats/drawing/textWidth';
import { AXIS, CAPITAL, CUT, DASHED, EDGE, THIN, TYPE } from '../sheet/style';
import { wrappedCurve } from './curve';
import { hatchAbove } from './hatch';

/** How many lines the paper has round the tube. */
export const STATIONS = [8, 16] as const;
export type Stations = (typeof STATIONS)[number];

export type StripOptions = {
  readonly paperThickness: number;
  readonly display: Display;
  /** 16 become 8 where there is no room for them. Default 16. */
  readonly stations?: Stations;
};

export type Strip = {
  readonly items: readonly Item[];
  readonly box: Box;
  /** From the left edge to the glue line: once round the tube on the paper's middle. */
  readonly width: number;
  /** Of the paper's lower edge, from the square line. */
  readonly low: number;
  readonly stations: number;
};

/** Under the glue line's other end. */
const TAB = 12;
/** Paper left over the highest point of the curve. */
const OVER = 13;
/** Least paper under the curve: ordinates and the words above them. */
const UNDER = 27;
/** Where the paper hangs over the square line, that line runs above the ordinates and the words over them. */
const LEAST_OVERHANG = 30;
/** Ordinates stand below this. */
const ORDINATES = 15;
/** A strip longer than this along the tube is cut off below. */
const LONGEST = 150;
/** So that an ordinate stands beside its line: 16 stations where there is room, else 8. */
const LEAST_SPACING = 5;
/** Two marks nearer than this on paper are one line. */
const SAME_LINE = 0.4;
/** Nearer than this, the words over two marks touch: CROTCH from an edge, and half of HEEL. */
const LABEL_ROOM = 28;

export const wrapWidth = (outsideDiameter: number, paperThickness: number): number =>
  Math.PI * (outsideDiameter + paperThickness);

export function templateStrip(cut: WrapCut, { paperThickness, display, stations: asked = 16 }: StripOptions): Strip {
  const width = wrapWidth(cut.outsideDiameter, paperThickness);
  const reach = extremes(cut.height, cut.corners);
  const low = lowerEdge(reach.min, reach.max);
  const top = -(reach.max - low + OVER);
  const y = (height: number): number => low - height;
  const x = (angle: number): number => (angle / (2 * Math.PI)) * width;
  const stations = width / asked < LEAST_SPACING ? 8 : asked;
  const edgeAt = (at: number): number => y(cut.height(((at / width) * 2 * Math.PI) % (2 * Math.PI)));

  const items: Item[] = [
    ...hatchAbove(edgeAt, top, width),
    polyline(
      [
        [width, 0],
        [0, 0],
        [0, top],
        [width, top],
        [width, edgeAt(0)],
      ],
      EDGE,
      { name: 'paper edge' },
    ),
    ...tab(cut, width, y),
    ...stationLines(cut, width, stations, y, display, reach),
    ...extremeLines(reach, x, top, width / stations),
    ...squareLine(low, width),
    polyline(
      wrappedCurve(cut, width).map(([u, h]): Point => [u, y(h)]),
      CUT,
      { name: 'cut' },
    ),
    ...sides(width, top),
  ];
  return { items, box: { left: -3, top: top - 12, right: width + TAB + 1, bottom: 6.5 }, width, low, stations };
}

/** The square line itself where the paper can reach it, else a round distance above it, or below where there is no room. */
function lowerEdge(least: number, most: number): number {
  if (least < UNDER) return Math.min(-LEAST_OVERHANG, 10 * Math.floor((least - UNDER) / 10));
  return most + OVER > LONGEST ? Math.max(0, 10 * Math.floor((least - UNDER) / 10)) : 0;
}

function tab(cut: WrapCut, width: number, y: (height: number) => number): Item[] {
  const angle = (TAB / width) * 2 * Math.PI;
  const curve = wrappedCurve(cut, width, 2 * Math.PI + angle)
    .filter(([u]) => u >= width)
    .map(([u, h]): Point => [u, y(h)]);
  const height = cut.height(0);
  const words = ['GLUE UNDER LEFT EDGE', 'GLUE UNDER', 'GLUE'].find(
    (w) => textWidth(w, TYPE.plain, true) < Math.min(-y(height), -curve.at(-1)![1]) - 4,
  );
  return [
    line([width, 0], [width, y(height)], DASHED, { name: 'glue line' }),
    polyline([...curve, [width + TAB, curve.at(-1)![1]], [width + TAB, -2], [width + TAB - 2, 0], [width, 0]], THIN),
    text(words ?? '', [width + TAB / 2 + 2.5, -(-y(height) / 2)], TYPE.plain, {
      anchor: 'middle',
      bold: true,
      turn: 90,
    }),
  ];
}

function stationLines(
  cut: WrapCut,
  width: number,
  count: number,
  y: (height: number) => number,
  display: Display,
  reach: Extremes,
): Item[] {
  // Heel and crotch have lines of their own.
  const taken = [...reach.highest, ...reach.lowest].map((a) => (a / (2 * Math.PI)) * width);
  return Array.from({ length: count + 1 }, (_, i): Item[] => {
    const at = (i * width) / count;
    const height = cut.height((((i % count) * 2) / count) * Math.PI);
    const last = i === count;
    const ordinate = lengthParts(height, display).number;
    return [
      // The first and the last run along the paper's edge and the glue line.
      ...(i === 0 || last || taken.some((t) => Math.abs(t - at) < SAME_LINE)
        ? []
        : [line([at, 0], [at, y(height)], THIN, { name: `station ${i}` })]),
      text(String(i % count), [at, 5], TYPE.number, { anchor: 'middle', bold: true }),
      text(ordinate, [last ? at - 0.9 : at + 0.9 + CAPITAL * TYPE.plain, -1.5], TYPE.plain, { turn: 90 }),
    ].slice(0, last && width / count < 2 * LEAST_SPACING ? 1 : undefined);
  }).flat();
}

/** Where the paper hangs over the square line, that line is drawn on it and named. */
function squareLine(low: number, width: number): Item[] {
  if (low >= 0) return [];
  return [
    line([0, low], [width, low], EDGE, { name: 'square line' }),
    label('square line', width / 2 + width / 32, low + 3.8, TYPE.plain),
  ];
}

/** Heel and crotch over the paper, in two rows where they would run into each other. At the seam they show at both edges. */
function extremeLines(reach: Extremes, x: (angle: number) => number, top: number, spacing: number): Item[] {
  const marks = [
    ...reach.highest.flatMap(atBothEdges).map((angle) => ({ word: 'HEEL', angle })),
    ...reach.lowest.flatMap(atBothEdges).map((angle) => ({ word: 'CROTCH', angle })),
  ].sort((a, b) => a.angle - b.angle);
  const least = Math.min(...marks.slice(1).map((m, i) => x(m.angle) - x(marks[i]!.angle)));
  const crowded = least < LABEL_ROOM;
  return marks.flatMap(({ word, angle }) => {
    const up = crowded && word === 'CROTCH' ? 7.5 : 2.8;
    const edge = angle === 0 || angle === 2 * Math.PI;
    // Between two stations it stops short of the ordinate that stands there.
    const off = Math.abs(x(angle) / spacing - Math.round(x(angle) / spacing)) * spacing;
    const foot = edge ? top : off < SAME_LINE ? 0 : -ORDINATES;
    return [
      line([x(angle), foot], [x(angle), top - up + 1.2], edge ? THIN : AXIS, { name: word.toLowerCase() }),
      text(word, [x(angle), top - up], TYPE.number, {
        bold: true,
        anchor: angle === 0 ? 'start' : angle === 2 * Math.PI ? 'end' : 'middle',
      }),
    ];
  });
}

const atBothEdges = (angle: number): number[] => (angle < 1e-9 ? [0, 2 * Math.PI] : [angle]);

/** What is kept, with the way to the cut, and what falls off: twice round the tube, so that each half shows it. */
function sides(width: number, top: number): Item[] {
  const places = width < 110 ? [0.5] : [0.25, 0.75];
  return places.flatMap((share) => {
    const at = share * width + width / 32;
    return [arrowed('KEEP', at, -17.3), label('SCRAP', at, top + 8)];
  });
}

function label(word: string, at: number, baseline: number, size: number = TYPE.label): Item {
  const bold = size === TYPE.label;
  const half = textWidth(word, size, bold) / 2 + 1.2;
  const box = { left: at - half, right: at + half, top: baseline - 0.95 * size, bottom: baseline + 0.26 * size };
  return group([0, 0], [cover(box), text(word, [at, baseline], size, { anchor: 'middle', bold })]);
}

function arrowed(word: string, at: number, baseline: number): Item {
  const toward = 'to the cut';
  const [wide, more] = [textWidth(word, TYPE.label, true), textWidth(toward, TYPE.plain)];
  const start = at - (wide + more + 8) / 2;
  const shaft = start + wide + 4;
  const box = { left: start - 1, right: start + wide + more + 9, top: baseline - 5.8, bottom: baseline + 2 };
  return group(
    [0, 0],
    [
      cover(box),
      text(word, [start, baseline], TYPE.label, { bold: true }),
      line([shaft, baseline + 1.7], [shaft, baseline - 2.5], CUT),
      arrowHead([shaft, baseline - 5.6], -Math.PI / 2, 4.2),
      text(toward, [shaft + 4, baseline], TYPE.plain),
    ],
  );
}
