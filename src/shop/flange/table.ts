/** Every hole and opening of a flange in a table, places counted from the datum, holes with their ISO 273 class in words. mm. */
import { type Loop, loopBounds, type Point2 } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { HOLE_CLASSES, holesFor } from '../../../shared/stock/holes';
import { lengthParts } from '../../../shared/units';
import type { Item, Point } from '../../formats/drawing/drawing';
import { line, text } from '../../formats/drawing/items';
import type { FlangeHole, FlangeSheetPlan } from '../flangeSheet';
import { fitted } from '../sheet/sheet';
import { EDGE, THIN, TYPE } from '../sheet/style';
import { datumOf, inOrder, letter, middleOf } from './plate';

export type Table = {
  readonly columns: readonly Column[];
  /** The first is the head, and so is every one that is marked. */
  readonly rows: readonly { readonly cells: readonly string[]; readonly head?: true }[];
};
type Column = { readonly width: number; readonly figure?: true };

const NUMBER: Column = { width: 12 };
const PLACE: Column = { width: 19, figure: true };
const HOLE_COLUMNS: readonly Column[] = [NUMBER, PLACE, PLACE, { width: 17, figure: true }, { width: 41 }];
const PORT_COLUMNS: readonly Column[] = [NUMBER, PLACE, PLACE, { width: 29, figure: true }, { width: 21 }];
export const ROW = 5.6;

export const tableWidth = ({ columns }: Table): number => columns.reduce((sum, c) => sum + c.width, 0);
export const tableHeight = ({ rows }: Table): number => rows.length * ROW;

const figureIn = (display: Display) => (mm: number) => lengthParts(mm, display).number.replace('-', '−');

/** Counted from the datum, holes before openings. */
export function flangeTables(plan: FlangeSheetPlan, display: Display): Table[] {
  const figure = figureIn(display);
  const [x0, y0] = datumOf(plan);
  const place = ([x, y]: Point2): string[] => [figure(x - x0), figure(y - y0)];
  const size = (loop: Loop): string => {
    const { min, max } = loopBounds(loop);
    const [wide, high] = [max[0] - min[0], max[1] - min[1]];
    return isCircle(loop) ? `Ø ${figure(wide)}` : `${figure(wide)} × ${figure(high)}`;
  };
  const holes = inOrder(plan.holes).map((hole) => ({
    cells: [
      String(hole.number),
      ...place(hole.at),
      figure(hole.diameter),
      `${holeWords(hole)}${hole.half ? ', half' : ''}`,
    ],
  }));
  const ports = plan.openings.map(({ loop, label }, i) => ({
    cells: [letter(i), ...place(middleOf(loop)), size(loop), label],
  }));
  const steps = plan.steps.map(({ loop, depth }, i) => ({
    cells: [letter(i), ...place(middleOf(loop)), size(loop), `${figure(depth)} deep`],
  }));
  const tables: Table[] = [
    {
      columns: HOLE_COLUMNS,
      rows: holes.length > 0 ? [{ cells: ['Hole', 'X', 'Y', 'Ø', 'for, ISO 273 class'], head: true }, ...holes] : [],
    },
    {
      columns: PORT_COLUMNS,
      rows: [
        ...(ports.length > 0 ? [{ cells: ['Port', 'X', 'Y', 'opening', ''], head: true as const }, ...ports] : []),
        ...(steps.length > 0 ? [{ cells: ['Step', 'X', 'Y', 'opening', ''], head: true as const }, ...steps] : []),
      ],
    },
  ];
  return tables.filter(({ rows }) => rows.length > 0);
}

const isCircle = (loop: Loop): boolean => loop.length === 2 && loop.every(([, , bulge]) => bulge === 1);

/** `M8, medium (ISO 273)`: whose class the hole is, or that it is none. */
export function holeWords({ diameter, thread }: Pick<FlangeHole, 'diameter' | 'thread'>): string {
  if (thread === undefined) return '';
  const holes = holesFor(thread);
  if (!holes) return thread;
  const index = holes.findIndex((d) => Math.abs(d - diameter) < 0.005);
  return index < 0 ? `${thread}, not ISO 273` : `${thread}, ${HOLE_CLASSES[index]!}`;
}

export function tableItems(table: Table, [left, top]: Point): Item[] {
  const right = left + tableWidth(table);
  return table.rows.flatMap(({ cells, head }, r): Item[] => {
    const bottom = top + (r + 1) * ROW;
    let x = left;
    const words = table.columns.map(({ width, figure }, c): Item => {
      const bold = head === true || c === 0;
      const at = figure ? x + width - 1.5 : x + (c === 0 ? 0.5 : 2.5);
      x += width;
      return text(fitted(cells[c]!, width - 2, TYPE.plain, bold), [at, bottom - 1.6], TYPE.plain, {
        bold,
        anchor: figure ? 'end' : 'start',
      });
    });
    return [...words, line([left, bottom], [right, bottom], head ? EDGE : THIN)];
  });
}
