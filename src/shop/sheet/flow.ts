/**
 * Headings, running text, tables and figures one under another, over as many upright sheets as they take: a table's head comes
 * again on each, a heading stays with what follows it. mm.
 */
import { type Item, type Point, widthOf } from '../../formats/drawing/drawing';
import { line, rectangle, text } from '../../formats/drawing/items';
import { textWidth, wrapText } from '../../formats/drawing/textWidth';
import { freeBox, type Paper, upright } from './paper';
import type { Sheet } from './sheet';
import { EDGE, LINE, THIN, TYPE } from './style';

export type FlowColumn = {
  readonly head: string;
  /** Share of the width. */
  readonly share: number;
  /** Set to the right, large: to be read at arm's length. */
  readonly figure?: true;
  readonly bold?: true;
  /** Set to the right, as plain words are: a figure that is not worked by. */
  readonly light?: true;
  /** A box to tick, whatever the cell says; none where it says `-`. */
  readonly box?: true;
};

export type Block =
  /** What follows begins a sheet. */
  | { readonly kind: 'sheet' }
  | { readonly kind: 'heading'; readonly words: string }
  | { readonly kind: 'words'; readonly words: string; readonly head?: string }
  | { readonly kind: 'table'; readonly columns: readonly FlowColumn[]; readonly rows: readonly (readonly string[])[] }
  | { readonly kind: 'figure'; readonly height: number; readonly at: (corner: Point, width: number) => Item[] };

/** What is never divided. */
type Piece = {
  readonly height: number;
  readonly at: (corner: Point) => Item[];
  /** Not to stand last on a sheet. */
  readonly withNext?: true;
  /** Drawn over it where it comes first on a sheet. */
  readonly again?: Piece;
  /** Only room to what follows: none is needed where a sheet ends. */
  readonly isRoom?: true;
  /** Nothing more goes on the sheet before. */
  readonly isEnd?: true;
};

const HEADING = 10;
const AFTER_WORDS = 1.4;
const AFTER_TABLE = 4;
/** Of words that have a head beside them. */
const INDENT = 28;
/** Above and below the words of a row. */
const ROW_ROOM = 1.2;
const CELL_ROOM = 2;
const TICK_BOX = 4.2;

export function flowSheets(title: string, blocks: readonly Block[], paper: Paper): Sheet[] {
  const size = upright(paper);
  const free = freeBox(size);
  const pieces = blocks.flatMap((block, i) => {
    const own = piecesOf(block, widthOf(free));
    // What introduces a table or a figure stands over it.
    const next = blocks[i + 1]?.kind;
    const leads =
      (block.kind === 'words' && (next === 'table' || next === 'figure')) ||
      // And what a figure's words say of it stands under it.
      (block.kind === 'figure' && next === 'words');
    return leads ? own.map((piece): Piece => ({ ...piece, withNext: true })) : own;
  });
  const pages: Item[][] = [];
  let y = Number.POSITIVE_INFINITY;
  for (const [i, piece] of pieces.entries()) {
    if (piece.isEnd) {
      y = Number.POSITIVE_INFINITY;
      continue;
    }
    if (piece.isRoom && y + piece.height > free.bottom) continue;
    const kept = piece.height + (piece.withNext ? keptWith(pieces, i) : 0);
    // One that is higher than a sheet gets one to itself, and no empty one before it.
    if (y + kept > free.bottom && (y > free.top || pages.length === 0)) {
      pages.push([]);
      y = free.top;
      if (piece.again) {
        pages.at(-1)!.push(...piece.again.at([free.left, y]));
        y += piece.again.height;
      }
    }
    pages.at(-1)!.push(...piece.at([free.left, y]));
    y += piece.height;
  }
  return pages.map((items, i) => ({
    ...size,
    title: pages.length > 1 ? `${title}, part ${i + 1} of ${pages.length}` : title,
    scale: '',
    items,
  }));
}

/** The height of what must stand on the same sheet after piece `i`. */
function keptWith(pieces: readonly Piece[], i: number): number {
  const next = pieces[i + 1];
  return next ? next.height + (next.withNext ? keptWith(pieces, i + 1) : 0) : 0;
}

function piecesOf(block: Block, width: number): Piece[] {
  switch (block.kind) {
    case 'sheet':
      return [{ height: 0, at: () => [], isEnd: true }];
    case 'heading':
      return [headingPiece(block.words, width)];
    case 'words':
      return [wordsPiece(block.words, width, block.head)];
    case 'figure':
      return [{ height: block.height, at: (corner) => block.at(corner, width) }];
    case 'table':
      return tablePieces(block.columns, block.rows, width);
  }
}

const headingPiece = (words: string, width: number): Piece => ({
  height: HEADING + 1,
  withNext: true,
  at: ([x, y]) => [
    text(words, [x, y + HEADING - 3.5], TYPE.label, { bold: true }),
    line([x, y + HEADING - 1.5], [x + width, y + HEADING - 1.5], EDGE),
  ],
});

function wordsPiece(words: string, width: number, head?: string): Piece {
  const indent = head === undefined ? 0 : INDENT;
  const lines = wrapText(words, width - indent, TYPE.plain);
  return {
    height: lines.length * LINE + AFTER_WORDS,
    at: ([x, y]) => [
      ...(head === undefined ? [] : [text(head, [x, y + 0.75 * LINE], TYPE.plain, { bold: true })]),
      ...lines.map((l, i) => text(l, [x + indent, y + (i + 0.75) * LINE], TYPE.plain)),
    ],
  };
}

function tablePieces(columns: readonly FlowColumn[], rows: readonly (readonly string[])[], width: number): Piece[] {
  const whole = columns.reduce((sum, c) => sum + c.share, 0);
  const widths = columns.map((c) => (c.share / whole) * width);
  const head = rowPiece(
    columns.map((c) => ({ ...c, bold: true })),
    widths,
    columns.map((c) => c.head),
    true,
  );
  const body = rows.map((row) => rowPiece(columns, widths, row, false));
  const headed = columns.some((c) => c.head.trim() !== '');
  return [
    ...(headed ? [{ ...head, withNext: true } as const] : []),
    ...body.map(
      (piece, i): Piece => ({
        ...piece,
        ...(i > 0 && headed ? { again: head } : {}),
        // No row alone, on this sheet or the next.
        ...(body.length > 1 && (i === 0 || i === body.length - 2) ? { withNext: true } : {}),
      }),
    ),
    { height: AFTER_TABLE, at: () => [], isRoom: true },
  ];
}

/** A word too wide for its cell, a name mostly, is parted: behind a dash where it can be, else anywhere. */
function parted(words: string, room: number, size: number, bold: boolean): string {
  return words
    .split(' ')
    .flatMap((word) => {
      if (textWidth(word, size, bold) <= room) return [word];
      const pieces: string[] = [];
      let piece = '';
      for (const part of word.split(/(?<=-)/).flatMap((p) => (textWidth(p, size, bold) > room ? Array.from(p) : [p])))
        if (textWidth(piece + part, size, bold) <= room || piece === '') piece += part;
        else {
          pieces.push(piece);
          piece = part;
        }
      return [...pieces, piece];
    })
    .join(' ');
}

function rowPiece(
  columns: readonly FlowColumn[],
  widths: readonly number[],
  row: readonly string[],
  isHead: boolean,
): Piece {
  const width = widths.reduce((sum, w) => sum + w, 0);
  const cells = columns.map(({ figure, bold, light, box }, c) => {
    const size = figure && !isHead ? TYPE.number : TYPE.plain;
    const room = widths[c]! - CELL_ROOM;
    const isBold = bold === true || (figure === true && !isHead);
    const words = box && !isHead ? '' : (row[c] ?? '');
    return {
      size,
      toRight: figure ?? light,
      bold: isBold,
      lines: wrapText(parted(words, room, size, isBold), room, size, isBold),
      ticked: box === true && !isHead && row[c] !== '-',
    };
  });
  const height = Math.max(...cells.map((c) => c.lines.length)) * LINE + 2 * ROW_ROOM;
  return {
    height,
    at: ([left, top]) => {
      let x = left;
      const words = cells.flatMap(({ lines, size, toRight, bold, ticked }, c): Item[] => {
        if (ticked) {
          const [bx, by] = [x + CELL_ROOM / 2, top + ROW_ROOM + 0.3];
          x += widths[c]!;
          return [rectangle({ left: bx, top: by, right: bx + TICK_BOX, bottom: by + TICK_BOX }, EDGE)];
        }
        const at = toRight ? x + widths[c]! - CELL_ROOM : x + (c === 0 ? 0 : CELL_ROOM / 2);
        x += widths[c]!;
        return lines
          .filter((words) => words !== '')
          .map((words, i) =>
            text(words, [at, top + ROW_ROOM + (i + 0.75) * LINE], size, { bold, anchor: toRight ? 'end' : 'start' }),
          );
      });
      return [...words, line([left, top + height], [left + width, top + height], isHead ? EDGE : THIN)];
    },
  };
}
