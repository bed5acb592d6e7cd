/**
 * The packet's first page: the header in a picture, its key numbers, what is in the packet and on which page, whether it may be cut.
 * What is wrong or must be known before the first cut follows on a page of its own, so that none of it is left out.
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
  readonly facts?: readonly (readonly [head: string, words: string])[];
  /** Drawn for this much room, its corner at the origin. */
  readonly picture?: { readonly items: readonly Item[] };
};

/** The room that a picture is to be drawn for. */
export const PICTURE = { width: 190, height: 88 };

/** Problems beyond these are only counted: who has so many does not cut. */
const MOST_PROBLEMS = 30;
const MOST_FACTS = 9;
const BIG = 9;
const ROW = 6.6;
const INDENT = 34;

export function coverSheets(cover: Cover, paper: Paper): Sheet[] {
  return [firstPage(cover, paper), ...beforeCutting(cover, paper)];
}

/** How many pages come before the first that is listed. */
export const coverPages = (cover: Omit<Cover, 'contents'>, paper: Paper): number =>
  1 + beforeCutting(cover, paper).length;

function firstPage(
  { design, contents, problems, fitting = [], starts, display, facts = [], picture }: Cover,
  paper: Paper,
): Sheet {
  const size = upright(paper);
  const free = freeBox(size);
  const width = widthOf(free);
  const items: Item[] = [];
  let y = free.top + 9;
  for (const words of wrapText(design, width, BIG, true).slice(0, 2)) {
    items.push(text(fitted(words, width, BIG, true), [free.left, y], BIG, { bold: true }));
    y += BIG * 1.25;
  }
  y -= 4;
  if (picture) {
    items.push(group([free.left + (width - PICTURE.width) / 2, y - 4], picture.items));
    y += PICTURE.height;
  }
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
  section(problems.length === 0 ? 'The design holds every rule' : `NOT READY TO CUT: ${count(problems.length)}`);
  const next =
    problems.length + fitting.length + starts.length > 0 ? 'The next page says what to know before you cut. ' : '';
  paragraph(items, [`${next}${printWords(display)}`], [free.left, y], width);
  return { ...size, title: 'Workshop packet', scale: '', items };
}

const printWords = (display: Display): string =>
  `Printed at 100 %, the bar on each page measures ${barLength(display)}: check it before you cut. All figures are nominal: tube varies, bends spring back, welds draw. Measure your tube, and prove the first piece before the rest is cut.`;

function beforeCutting({ problems, fitting = [], starts }: Omit<Cover, 'contents'>, paper: Paper): Sheet[] {
  const shown = problems.slice(0, MOST_PROBLEMS);
  const more = problems.length - shown.length;
  const section = (head: string, words: readonly string[]): Block[] =>
    words.length > 0
      ? [{ kind: 'heading', words: head }, ...words.map((w): Block => ({ kind: 'words', words: w }))]
      : [];
  const blocks = [
    ...section(`Not ready to cut: ${count(problems.length)}`, [
      ...shown.map((p) => `· ${p}`),
      ...(more > 0 ? [`and ${more} more: run the check.`] : []),
    ]),
    ...section('No rule, but know it before you cut', fitting),
    ...section('Tubes that start elsewhere than their bend table', starts.length > 0 ? [START_RULE, ...starts] : []),
  ];
  return blocks.length > 0 ? flowSheets('Before you cut', blocks, paper) : [];
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
