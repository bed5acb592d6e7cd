/** The packet's first page: what is in it and on which page, whether the design holds its rules, and what to mind. */
import type { Display } from '../../../shared/design/types';
import type { Item, Point } from '../../formats/drawing/drawing';
import { widthOf } from '../../formats/drawing/drawing';
import { line, text } from '../../formats/drawing/items';
import { textWidth, wrapText } from '../../formats/drawing/textWidth';
import { freeBox, type Paper, upright } from '../sheet/paper';
import { barLength, fitted, type Sheet } from '../sheet/sheet';
import { EDGE, LINE, THIN, TYPE } from '../sheet/style';
import { START_RULE } from '../tubeStart';

export type Cover = {
  readonly design: string;
  readonly contents: readonly {
    readonly name: string;
    readonly use: string;
    readonly from: number;
    readonly to: number;
  }[];
  /** What the check found, in words. */
  readonly problems: readonly string[];
  /** What no rule holds and must be known before anything is cut, in words: what tools do not reach, what does not come off. */
  readonly fitting?: readonly string[];
  /** Of runners whose tube starts elsewhere than their bend table, in words. */
  readonly starts: readonly string[];
  readonly display: Display;
};

const cautions = (display: Display): readonly (readonly [head: string, words: string])[] => [
  [
    'Print check',
    `Print at 100 %, no fit to page. Measure the bar on each page before anything is cut: ${barLength(display)}.`,
  ],
  [
    'Nominal',
    'All figures are nominal. Tube varies in diameter, wall and roundness, bends spring back, welds draw. Measure your tube, and prove the first piece before the rest is cut.',
  ],
  ['Edges', 'Deburr every cut before it is handled and before it is welded.'],
  [
    'Welding',
    'Local codes and licensed practice come first; where they differ from this packet, they hold and not the packet.',
  ],
  [
    'Fume',
    'Zinc coatings give off fume that brings fever, stainless steel fume that holds hexavalent chromium. Take coatings off first, draw the fume away where it rises, and wear the respirator that the job calls for.',
  ],
];

/** Problems beyond these are only counted; fewer where tubes take room too. */
const MOST_PROBLEMS = 6;
const MOST_PROBLEMS_BESIDE = 4;
const MOST_FITTING = 2;
const BIG = 9;
const ROW = 7;

export function coverSheet({ design, contents, problems, fitting = [], starts, display }: Cover, paper: Paper): Sheet {
  const size = upright(paper);
  const free = freeBox(size);
  const width = widthOf(free);
  const items: Item[] = [];
  let y = free.top + 9;
  for (const words of wrapText(design, width, BIG, true).slice(0, 2)) {
    items.push(text(fitted(words, width, BIG, true), [free.left, y], BIG, { bold: true }));
    y += BIG * 1.25;
  }
  y += 1;
  const section = (head: string): void => {
    items.push(text(head, [free.left, y], TYPE.label + 0.5, { bold: true }));
    items.push(line([free.left, y + 2], [free.right, y + 2], EDGE));
    y += 2 + ROW;
  };
  section('In this packet');
  for (const entry of contents) {
    items.push(...contentsRow(entry, [free.left, y], free.right));
    y += ROW;
  }
  if (contents.length === 0) {
    items.push(text('Nothing yet: the design has no routed runner and no cut.', [free.left, y], TYPE.plain));
    y += ROW;
  }
  y += 4;
  section(problems.length === 0 ? 'The design holds every rule' : `Not ready to cut: ${count(problems.length)}`);
  const shown = problems.slice(0, starts.length > 0 ? MOST_PROBLEMS_BESIDE : MOST_PROBLEMS);
  const more = problems.length - shown.length;
  const findings =
    problems.length === 0
      ? ['Checked when this packet was made: ends, bends, straights, lengths and clearances.']
      : [...shown.map((p) => `· ${p}`), ...(more > 0 ? [`and ${more} more: run the check.`] : [])];
  y = paragraph(items, findings, [free.left, y], width);
  y += 5;
  if (fitting.length > 0) {
    section('No rule, but know it before you cut');
    y = paragraph(items, fitting.slice(0, MOST_FITTING), [free.left, y], width);
    y += 5;
  }
  if (starts.length > 0) {
    section('Tubes that start elsewhere than their bend table');
    const below = 5 + 2 + ROW + mind([], [0, 0], width, display);
    y = paragraph(items, startLines(starts, (free.bottom - y - below) / LINE, width), [free.left, y], width);
    y += 5;
  }
  section('Mind');
  mind(items, [free.left, y], width, display);
  return { ...size, title: 'Workshop packet', scale: '', items };
}

/** @returns where what comes below may begin, as `paragraph` */
function mind(items: Item[], [x, y]: Point, width: number, display: Display): number {
  const indent = 28;
  let at = y;
  for (const [head, words] of cautions(display)) {
    items.push(text(head, [x, at], TYPE.plain, { bold: true }));
    at = paragraph(items, [words], [x + indent, at], width - indent) + 1.6;
  }
  return at;
}

/** As many as have room; the others are only counted. @param room in lines */
function startLines(starts: readonly string[], room: number, width: number): string[] {
  const lines = (words: string): number => wrapText(words, width, TYPE.plain).length;
  let left = room - lines(START_RULE) - starts.reduce((sum, words) => sum + lines(words), 0);
  if (left >= 0) return [START_RULE, ...starts];
  let shown = starts.length;
  while (shown > 0 && left < 1) left += lines(starts[--shown]!);
  const more = starts.length - shown;
  return [START_RULE, ...starts.slice(0, shown), `and ${more} more: trim_start of the cut list says which.`];
}

const count = (n: number): string => (n === 1 ? 'one rule fails' : `${n} rules fail`);

function contentsRow({ name, use, from, to }: Cover['contents'][number], [x, y]: Point, right: number): Item[] {
  const pages = from === to ? `page ${from}` : `pages ${from} to ${to}`;
  const room = right - x - 64 - textWidth(pages, TYPE.plain) - 4;
  return [
    text(fitted(name, 62, TYPE.number, true), [x, y], TYPE.number, { bold: true }),
    text(fitted(use, room, TYPE.plain), [x + 64, y], TYPE.plain),
    text(pages, [right, y], TYPE.plain, { anchor: 'end' }),
    line([x, y + 2], [right, y + 2], THIN),
  ];
}

function paragraph(items: Item[], lines: readonly string[], [x, y]: Point, width: number): number {
  let at = y;
  for (const words of lines.flatMap((l) => wrapText(l, width, TYPE.plain))) {
    items.push(text(words, [x, at], TYPE.plain));
    at += LINE;
  }
  return at;
}
