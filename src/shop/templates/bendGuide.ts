/**
 * A guide at true size to cut stock bends by: the arcs of centerline, inside and outside, and the saw lines through their
 * centre, a degree mark every 5°. Where half a circle does not fit the paper, less of it is drawn. mm, degrees in words only.
 */
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import { type Box, heightOf, type Item, type Point, widthOf } from '../../formats/drawing/drawing';
import { arc, group, line, registerMark, text } from '../../formats/drawing/items';
import { freeBox, lying, type Paper, type Size, upright } from '../sheet/paper';
import { paragraphs } from '../sheet/paragraphs';
import { type Sheet, TRUE_SIZE } from '../sheet/sheet';
import { AXIS, CAPITAL, CUT, EDGE, HATCH, THIN, TYPE } from '../sheet/style';

export type StockBend = { readonly outsideDiameter: number; readonly radius: number };

const RADIANS = Math.PI / 180;
/** The largest that fits with its centre is drawn; a bend too wide for that is drawn without. */
const SECTORS = [180, 90, 60, 45, 30] as const;
const WITHOUT_CENTRE = [60, 45, 30, 15, 5] as const;
/** A saw line runs on past the tube on either side. */
const PAST = 8;
const LABEL = 11;
/** 15° rays start this far from the centre, so that they do not blot it out. */
const CLEAR = 14;
const GAP = 4;

/** What of a bend is drawn: from which angle to the eye, how much, and whether its centre is on the sheet. */
type View = { readonly start: number; readonly sector: number; readonly centred: boolean };

const views = (sectors: readonly number[], centred: boolean): View[] =>
  sectors.flatMap((sector) =>
    sector === 180
      ? [{ start: 0, sector, centred }]
      : [0, 90 - sector / 2, -sector / 2].map((start) => ({ start, sector, centred })),
  );

const VIEWS = [...views(SECTORS, true), ...views(WITHOUT_CENTRE, false)];

/** @throws RangeError where not even a few degrees of the bend fit the paper: wider than any tube bends */
export function bendGuide(bend: StockBend, paper: Paper, display: Display): Sheet {
  for (const view of VIEWS)
    for (const size of [lying(paper), upright(paper)]) {
      const sheet = sheetOn(size, bend, view, display);
      if (sheet) return sheet;
    }
  throw new RangeError(`A bend of ${bend.radius} mm radius does not fit a sheet`);
}

function sheetOn(size: Size, bend: StockBend, view: View, display: Display): Sheet | null {
  const free = freeBox(size);
  const over = paragraphs(guideNotes(bend, view, display), widthOf(free), 2);
  const { items, box } = guide(bend, view);
  const room = { width: widthOf(free), height: heightOf(free) - over.height - GAP };
  if (widthOf(box) > room.width || heightOf(box) > room.height) return null;
  const [x, y] = [free.left + (room.width - widthOf(box)) / 2, free.bottom - (room.height + heightOf(box)) / 2];
  return {
    ...size,
    title: `Bend guide, R ${formatLength(bend.radius, display)}, tube ${formatLength(bend.outsideDiameter, display)}`,
    scale: TRUE_SIZE,
    items: [...over.at([free.left, free.top]), group([x - box.left, y - box.top], items)],
  };
}

function guideNotes({ outsideDiameter, radius }: StockBend, { sector, centred }: View, display: Display): string[] {
  const length = (mm: number): string => formatLength(mm, display);
  const degree = (r: number): string => formatLength(r * RADIANS, display, display === 'mm' ? 3 : 4);
  const [inside, outside] = [radius - outsideDiameter / 2, radius + outsideDiameter / 2];
  return [
    `Centerline radius ${length(radius)}, inside ${length(inside)}, outside ${length(outside)}. One degree is ${degree(radius)} along the centerline, ${degree(inside)} inside, ${degree(outside)} outside.`,
    `Lay the bend on the arcs with its square end on 0°, mark inside and outside at the angle, and saw along the line: it points at the ${
      centred ? 'centre mark' : `centre, ${length(inside)} in from the inside arc and off this sheet`
    }, so the cut is square to the tube.${sector < 180 ? ` Wider bends: step them off ${sector}° at a time.` : ''}`,
  ];
}

function guide({ outsideDiameter, radius }: StockBend, { start, sector, centred }: View): { items: Item[]; box: Box } {
  const [inside, outside] = [radius - outsideDiameter / 2, radius + outsideDiameter / 2];
  // y is down, so angles to the eye's counter-clockwise are negative here.
  const at = (r: number, degrees: number): Point => {
    const a = (start + degrees) * RADIANS;
    return [r * Math.cos(a), -r * Math.sin(a)];
  };
  const [first, turn] = [-start * RADIANS, -sector * RADIANS];
  const from = Math.max(inside - PAST, 2);
  const rays = Array.from({ length: sector / 5 + 1 }, (_, i): Item[] => {
    const degrees = 5 * i;
    const bold = degrees % 15 === 0;
    return [
      ...(centred && bold && from > CLEAR ? [line(at(CLEAR, degrees), at(from, degrees), HATCH)] : []),
      line(at(from, degrees), at(outside + PAST, degrees), bold ? EDGE : THIN, { name: `ray ${degrees}` }),
      degreeMark(degrees, start + degrees, bold, at(outside + PAST + 1.5, degrees)),
    ];
  }).flat();
  return {
    items: [
      ...rays,
      arc([0, 0], inside, first, turn, CUT, { name: 'inside' }),
      arc([0, 0], outside, first, turn, CUT, { name: 'outside' }),
      arc([0, 0], radius, first, turn, AXIS, { name: 'centerline' }),
      ...(centred ? registerMark([0, 0], EDGE, 6) : []),
    ],
    box: extents(sector, at, outside + PAST + LABEL, centred ? 0 : from, centred ? 7 : 3),
  };
}

/** Of a piece of a ring, or of a sector where it begins in the centre; labels are upright, so a few mm more. */
function extents(
  sector: number,
  at: (r: number, degrees: number) => Point,
  outer: number,
  inner: number,
  edge: number,
): Box {
  const rim = Array.from({ length: sector + 1 }, (_, degrees) => [at(outer, degrees), at(inner, degrees)]).flat();
  const [xs, ys] = [rim.map((p) => p[0]), rim.map((p) => p[1])];
  return {
    left: Math.min(...xs) - edge,
    right: Math.max(...xs) + 2,
    top: Math.min(...ys) - 2,
    bottom: Math.max(...ys) + edge,
  };
}

/** Along its ray, and never upside down. */
function degreeMark(degrees: number, drawn: number, bold: boolean, [x, y]: Point): Item {
  const size = bold ? TYPE.label : TYPE.plain;
  const flipped = drawn > 90;
  const turn = flipped ? drawn - 180 : drawn;
  const drop = (CAPITAL * size) / 2;
  const [c, s] = [Math.cos(turn * RADIANS), Math.sin(turn * RADIANS)];
  return text(`${degrees}°`, [x + drop * s, y + drop * c], size, { bold, turn, anchor: flipped ? 'end' : 'start' });
}
