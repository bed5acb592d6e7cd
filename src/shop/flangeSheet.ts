/**
 * A flange on paper: a dimensioned view scaled to fit, with every hole and opening in a table from one datum; then the plate at
 * true size, over as many sheets as it takes, to lay on the head or the gasket. Plate frame: mm, x right, y up.
 */
import type { Loop, Point2 } from '../../geometry';
import type { Display } from '../../shared/design/types';
import { formatLength } from '../../shared/units';
import { heightOf, type Item, type Point, widthOf } from '../formats/drawing/drawing';
import { text } from '../formats/drawing/items';
import { overallDimensions } from './flange/dimensions';
import { datumMark, datumWords, onPaper, plateBox, plateItems, upInOpenings, upMark } from './flange/plate';
import { flangeTables, ROW, type Table, tableHeight, tableItems, tableWidth } from './flange/table';
import { freeBox, lying, type Paper, type Size, upright } from './sheet/paper';
import { paragraphs } from './sheet/paragraphs';
import { type Sheet, TRUE_SIZE } from './sheet/sheet';
import { TYPE } from './sheet/style';
import { tiled } from './sheet/tiles';

export type FlangeHole = {
  readonly at: Point2;
  readonly diameter: number;
  /** What goes through it: `M8x1.25`. */
  readonly thread?: string;
  /** Its fastener's, as the design and every message count them. Absent: from left to right. */
  readonly number?: number;
  /** Shared with the plate beside this one: a bite out of the outline. */
  readonly half?: true;
};

export type FlangeOpening = {
  readonly loop: Loop;
  /** `port p1` */
  readonly label: string;
};

export type FlangeSheetPlan = {
  readonly id: string;
  readonly outline: Loop;
  readonly openings: readonly FlangeOpening[];
  /** Counterbores from the outer face, to the depth given. */
  readonly steps: readonly (FlangeOpening & { readonly depth: number })[];
  readonly holes: readonly FlangeHole[];
  readonly thickness: number;
  readonly material?: string;
  /** Which face is seen: `outer face, toward the tubes`. */
  readonly seen: string;
  readonly notes: readonly string[];
};

export type FlangeSheetOptions = { readonly paper: Paper; readonly display: Display };

const GAP = 6;
/** Beside and under the view: dimension lines. */
const DIMENSIONS = 16;
/** Over it: the datum's arrow may stand out. */
const ABOVE = 4;
/** Narrower notes stand in one. */
const TWO_COLUMNS = 120;
/** Of the sheet's height. */
const MOST_TABLE = 0.6;
/** One over these is drawn: what draughtsmen use, ISO 5455, and the 2.5 that old ones do. */
const SCALES = [1, 2, 2.5, 5, 10, 20, 50];

export function flangeSheets(plan: FlangeSheetPlan, options: FlangeSheetOptions): Sheet[] {
  return [...overview(plan, options), ...trueSize(plan, options)];
}

/** The view above, tables and notes side by side below; tables that would leave the view no room get sheets of their own. */
function overview(plan: FlangeSheetPlan, { paper, display }: FlangeSheetOptions): Sheet[] {
  const size = lying(paper);
  const free = freeBox(size);
  const tables = flangeTables(plan, display);
  const apart = Math.max(0, ...tables.map(tableHeight)) > heightOf(free) * MOST_TABLE;
  const beside = apart ? [] : tables;
  const words = flangeNotes(plan, display);
  const ways = [columnOf, rowOf].map((laid) => under(laid(beside), words, widthOf(free)));
  const { laid, notes, below, taken } = ways.reduce((best, way) => (way.below < best.below ? way : best));
  const box = plateBox(plan);
  const high = heightOf(free) - below - GAP;
  const room = { width: widthOf(free) - 2 * DIMENSIONS, height: high - DIMENSIONS - ABOVE };
  const scale = SCALES.find((s) => widthOf(box) / s <= room.width && heightOf(box) / s <= room.height);
  if (scale === undefined) throw new RangeError(`Flange ${plan.id} is too large to be drawn`);
  const corner: Point = [
    free.left + (widthOf(free) - widthOf(box) / scale) / 2,
    free.top + ABOVE + (room.height - heightOf(box) / scale) / 2,
  ];
  const place = onPaper(corner, box, scale);
  const title = titleOf(plan);
  const besides = laid.flatMap(({ table, at: [x, y] }) => tableItems(table, [free.left + x, free.bottom - below + y]));
  const first: Sheet = {
    ...size,
    title,
    scale: scale === 1 ? TRUE_SIZE : `SCALE 1 : ${scale}`,
    items: [
      ...plateItems(plan, place),
      ...datumMark(plan, place),
      ...upMark([
        place.at([box.right, 0])[0] + DIMENSIONS / 2,
        (place.at([0, -box.top])[1] + place.at([0, -box.bottom])[1]) / 2,
      ]),
      ...overallDimensions(box, place, display),
      ...besides,
      ...notes.at([free.left + taken, free.bottom - below]),
    ],
  };
  return [first, ...(apart ? tableSheets(tables, title, size) : [])];
}

type Laid = readonly { readonly table: Table; readonly at: Point }[];

const rowOf = (tables: readonly Table[]): Laid =>
  tables.map((table, i) => ({ table, at: [tables.slice(0, i).reduce((x, t) => x + tableWidth(t) + GAP, 0), 0] }));
const columnOf = (tables: readonly Table[]): Laid =>
  tables.map((table, i) => ({ table, at: [0, tables.slice(0, i).reduce((y, t) => y + tableHeight(t) + GAP, 0)] }));

/** Tables and, to their right, the notes in as many columns as there is width for: how high they are together. */
function under(laid: Laid, words: readonly string[], width: number) {
  const taken = Math.max(0, ...laid.map(({ table, at: [x] }) => x + tableWidth(table) + GAP));
  const notes = paragraphs(words, width - taken, width - taken > TWO_COLUMNS ? 2 : 1);
  const below = Math.max(notes.height, ...laid.map(({ table, at: [, y] }) => y + tableHeight(table)));
  return { laid, notes, below, taken };
}

function tableSheets(tables: readonly Table[], title: string, size: Size): Sheet[] {
  const free = freeBox(size);
  const most = Math.floor(heightOf(free) / ROW);
  return tables.flatMap(({ columns, rows }) => {
    const [head, ...rest] = rows;
    return Array.from({ length: Math.ceil(rest.length / (most - 1)) }, (_, i): Sheet => {
      const part = [head!, ...rest.slice(i * (most - 1), (i + 1) * (most - 1))];
      return {
        ...size,
        title: `${title}, table`,
        scale: '',
        items: tableItems({ columns, rows: part }, [free.left, free.top]),
      };
    });
  });
}

function flangeNotes(plan: FlangeSheetPlan, display: Display): string[] {
  const { thickness, material, seen, notes } = plan;
  const plate = material ? `Plate ${formatLength(thickness, display)} thick, ${material}. ` : '';
  return [
    `${plate}Seen on its ${seen}. Dimensions in ${display}.`,
    `X and Y count from ${datumWords(plan)}.`,
    ...notes,
  ];
}

function trueSize(plan: FlangeSheetPlan, { paper, display }: FlangeSheetOptions): Sheet[] {
  const ways = [upright(paper), lying(paper)].map((size) => tilesOn(size, plan, display));
  return ways[1]!.length < ways[0]!.length ? ways[1]! : ways[0]!;
}

function tilesOn(size: Size, plan: FlangeSheetPlan, display: Display): Sheet[] {
  const free = freeBox(size);
  const box = plateBox(plan);
  const place = onPaper([0, 0], box, 1);
  const items: Item[] = [...plateItems(plan, place), ...datumMark(plan, place), ...upInOpenings(plan, place)];
  const drawn = { left: -3, top: -3, right: widthOf(box) + 3, bottom: heightOf(box) + 3 };
  const over = paragraphs(
    [
      `Lay it on the head or the gasket and look through the holes before cutting metal. Plate ${formatLength(plan.thickness, display)}, seen on its ${plan.seen}.`,
      'On several sheets: cut each but the first on the lines through its register marks, lay mark on mark and tape.',
    ],
    widthOf(free),
    2,
  );
  const room = { width: widthOf(free), height: heightOf(free) - over.height - GAP };
  const { tiles, columns, rows } = tiled(items, drawn, room);
  return tiles.map((tile, i) => ({
    ...size,
    title: `${titleOf(plan)}, true size${tiles.length > 1 ? `, part ${i + 1} of ${tiles.length}` : ''}`,
    scale: TRUE_SIZE,
    items: [
      ...over.at([free.left, free.top]),
      ...(rows > 1
        ? [
            text(
              `row ${tile.row + 1} of ${rows}, column ${tile.column + 1} of ${columns}`,
              [free.right, free.bottom + 8],
              TYPE.plain,
              {
                anchor: 'end',
              },
            ),
          ]
        : []),
      ...tile.at([free.left + (widthOf(free) - tile.width) / 2, free.top + over.height + GAP]),
    ],
  }));
}

/** An id that says what it is needs no more. */
const titleOf = ({ id }: FlangeSheetPlan): string =>
  /flange/i.test(id) ? id.charAt(0).toUpperCase() + id.slice(1) : `Flange ${id}`;
