/**
 * The packet's first page: the header in a picture, its key numbers, what is in the packet and on which page, whether it may be cut.
 * What is wrong or must be known before the first cut stands there too, or on pages of its own where it is too much for that: none
 * of it is left out.
 */
import type { Display } from '../../../shared/design/types';
import type { Item, Point } from '../../formats/drawing/drawing';
import { widthOf } from '../../formats/drawing/drawing';
import { group, line, text } from '../../formats/drawing/items';
import { textWidth, wrapText } from '../../formats/drawing/textWidth';
import { type Block, flowSheets } from '../sheet/flow';
import { freeBox, type Paper, upright } from '../sheet/paper';
import { barLength, fitted, type Sheet } from '../sheet/sheet';
import { EDGE, LINE, THIN, TYPE } from '../sheet/style';

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
  readonly display: Display;
  readonly facts?: readonly (readonly [head: string, words: string])[];
  /** Drawn into the room that the page leaves it, its corner at the origin. */
  readonly picture?: (room: { readonly width: number; readonly height: number }) => readonly Item[];
};

/** Of a picture: smaller than the least nothing is seen on it, larger than the most it helps nobody. */
const LEAST_PICTURE = 50;
const MOST_PICTURE = 100;

/** Problems beyond these are only counted: who has so many does not cut. */
const MOST_PROBLEMS = 30;
const MOST_FACTS = 9;
const BIG = 9;
const ROW = 6.6;
const INDENT = 34;

/** @param cover its contents count, not yet their pages, where it is asked how many pages it takes */
export function coverSheets(cover: Cover, paper: Paper): Sheet[] {
  const findings = findingsOf(cover);
  const whole = firstPage(cover, findings, paper);
  if (whole) return [whole];
  const apart = firstPage(cover, null, paper);
  return [apart!, ...flowSheets('Before you cut', findings.flatMap(blocksOf), paper)];
}

type Finding = { readonly head: string; readonly words: readonly string[] };

/** @param findings null where they stand on pages of their own. @returns null where it is too much for a page */
function firstPage(cover: Cover, findings: readonly Finding[] | null, paper: Paper): Sheet | null {
  const size = upright(paper);
  const free = freeBox(size);
  const room = free.bottom - written(cover, findings, paper, 0).end;
  const least = cover.picture ? LEAST_PICTURE : 0;
  if (findings && room < least) return null;
  const height = cover.picture && room >= least ? Math.min(room, MOST_PICTURE) : 0;
  const { items, top } = written(cover, findings, paper, height);
  const width = widthOf(free);
  const picture = height > 0 ? [group([free.left, top], cover.picture!({ width, height }))] : [];
  return { ...size, title: 'Workshop packet', scale: '', items: [...picture, ...items] };
}

/** @param picture how high it is. @returns where it begins, and where all ends */
function written(cover: Cover, findings: readonly Finding[] | null, paper: Paper, picture: number) {
  const { design, contents, problems, display, facts = [] } = cover;
  const free = freeBox(upright(paper));
  const width = widthOf(free);
  const items: Item[] = [];
  let y = free.top + 9;
  for (const words of wrapText(design, width, BIG, true).slice(0, 2)) {
    items.push(text(fitted(words, width, BIG, true), [free.left, y], BIG, { bold: true }));
    y += BIG * 1.25;
  }
  const top = y - 8;
  y += picture - 4;
  for (const [head, words] of facts.slice(0, MOST_FACTS)) {
    items.push(text(fitted(head, INDENT - 2, TYPE.plain, true), [free.left, y], TYPE.plain, { bold: true }));
    y = paragraph(items, [words], [free.left + INDENT, y], width - INDENT) + 0.6;
  }
  y += 5;
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
  y += 3;
  if (problems.length === 0 || !findings)
    section(problems.length === 0 ? 'The design holds every rule' : notReady(problems.length));
  if (problems.length === 0) y = paragraph(items, [CHECKED], [free.left, y], width) + (findings?.length ? 3 : 0);
  for (const { head, words } of findings ?? []) {
    section(head);
    y = paragraph(items, words, [free.left, y], width) + 3;
  }
  const next = findings ? '' : 'The next page says what to know before you cut. ';
  y = paragraph(items, [`${next}${printWords(display)}`], [free.left, y], width);
  return { items, top, end: y - LINE };
}

const CHECKED = 'Checked when this packet was made: ends, bends, straights, lengths and clearances.';

const printWords = (display: Display): string =>
  `Printed at 100 %, the bar on each page measures ${barLength(display)}: check it before you cut. All figures are nominal: tube varies, bends spring back, welds draw. Measure your tube, and prove the first piece before the rest is cut.`;

function findingsOf({ problems, fitting = [] }: Cover): Finding[] {
  const shown = problems.slice(0, MOST_PROBLEMS);
  const more = problems.length - shown.length;
  return [
    {
      head: notReady(problems.length),
      words: [...shown.map((p) => `· ${p}`), ...(more > 0 ? [`and ${more} more: run the check.`] : [])],
    },
    { head: 'No rule, but know it before you cut', words: fitting },
  ].filter(({ words }) => words.length > 0);
}

const blocksOf = ({ head, words }: Finding): Block[] => [
  { kind: 'heading', words: head },
  ...words.map((w): Block => ({ kind: 'words', words: w })),
];

const notReady = (problems: number): string => `Not ready to cut: ${count(problems)}`;

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
