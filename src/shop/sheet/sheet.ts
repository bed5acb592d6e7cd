/**
 * A page of the packet before it knows its number, and the frame it then gets: heading, a bar of 100 mm that tells whether the
 * printer kept the size, and a strip with design, scale, hash and page. mm.
 */
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { Drawing, Item, Point } from '../../formats/drawing/drawing';
import { line, rectangle, text } from '../../formats/drawing/items';
import { textWidth } from '../../formats/drawing/textWidth';
import { MARGIN, type Size } from './paper';
import { EDGE, THIN, TYPE } from './style';

export type Sheet = Size & {
  readonly title: string;
  /** `TRUE SIZE 1 : 1`, `SCALE 1 : 2`, or empty where nothing is drawn to scale. */
  readonly scale: string;
  readonly items: readonly Item[];
};

export const TRUE_SIZE = 'TRUE SIZE 1 : 1';

/** What every page says of the design it belongs to. */
export type Stamp = {
  readonly design: string;
  /** SHA-256, as in the manifest; none where the page belongs to no design. */
  readonly hash?: string;
  /** In which unit its lengths are said; default mm. */
  readonly display?: Display;
};
export type PageNumber = { readonly page: number; readonly of: number };

export const CHECK_BAR = 100;
/** As many digits as tell two designs apart by eye. */
const HASH_DIGITS = 12;
const STRIP = 8;

export function framed(sheet: Sheet, { design, hash, display = 'mm' }: Stamp, number?: PageNumber): Drawing {
  const { width, height, title, scale, items } = sheet;
  const right = width - MARGIN;
  const heading = MARGIN + 5;
  const cells = [
    ...(scale ? [scale] : []),
    ...(hash ? [`design ${hash.slice(0, HASH_DIGITS)}`] : []),
    ...(number ? [`page ${number.page} of ${number.of}`] : []),
  ];
  const titleRoom = right - MARGIN - textWidth(scale, TYPE.label, true) - 6;
  // A long one is set smaller before it is cut short.
  const titleSize =
    [TYPE.title, TYPE.label, TYPE.number].find((size) => textWidth(title, size, true) <= titleRoom) ?? TYPE.number;
  return {
    width,
    height,
    items: [
      ...items,
      text(fitted(title, titleRoom, titleSize, true), [MARGIN, heading], titleSize, { bold: true }),
      text(scale, [right, heading], TYPE.label, { anchor: 'end', bold: true }),
      line([MARGIN, heading + 2.5], [right, heading + 2.5], EDGE),
      ...checkBar([MARGIN, height - MARGIN - STRIP - 5], display),
      ...strip(design, cells, width, height),
    ],
  };
}

/** What a rule must read along it: one that is marked in inches too. */
export const barLength = (display: Display): string => {
  const mm = `${CHECK_BAR.toFixed(1)} mm`;
  return display === 'in' ? `${mm}, ${formatLength(CHECK_BAR, 'in')}` : mm;
};

/** Its two long ticks stand exactly 100 mm apart. */
function checkBar([x, y]: Point, display: Display): Item[] {
  const ticks = Array.from({ length: 11 }, (_, i) => {
    const reach = i % 10 === 0 ? 6 : i === 5 ? 3.5 : 2.2;
    return line([x + 10 * i, y], [x + 10 * i, y - reach], THIN, i % 10 === 0 ? { name: 'check bar end' } : {});
  });
  return [
    line([x, y], [x + CHECK_BAR, y], EDGE, { name: 'check bar' }),
    ...ticks,
    text(
      `This bar${display === 'in' ? ':' : ' measures'} ${barLength(display)}.`,
      [x + CHECK_BAR + 3, y - 4],
      TYPE.plain,
      { bold: true },
    ),
    text('If not, print at 100 %, no fit to page.', [x + CHECK_BAR + 3, y + 0.6], TYPE.plain),
  ];
}

/** Cells from the right as wide as their words, the design's title in what remains. */
function strip(design: string, cells: readonly string[], width: number, height: number): Item[] {
  const box = { left: MARGIN, top: height - MARGIN - STRIP, right: width - MARGIN, bottom: height - MARGIN };
  const baseline = box.bottom - 2.7;
  const items: Item[] = [rectangle(box, EDGE)];
  let right = box.right;
  for (const words of [...cells].reverse()) {
    const left = right - textWidth(words, TYPE.plain) - 5;
    items.push(line([left, box.top], [left, box.bottom], THIN));
    items.push(text(words, [(left + right) / 2, baseline], TYPE.plain, { anchor: 'middle' }));
    right = left;
  }
  items.push(text(fitted(design, right - box.left - 5, TYPE.plain), [box.left + 2.5, baseline], TYPE.plain));
  return items;
}

/** Cut short with an ellipsis where it is too long for its place. */
export function fitted(words: string, room: number, size: number, bold = false): string {
  if (textWidth(words, size, bold) <= room) return words;
  let kept = words;
  while (kept && textWidth(`${kept}…`, size, bold) > room) kept = Array.from(kept).slice(0, -1).join('');
  return `${kept.trimEnd()}…`;
}
