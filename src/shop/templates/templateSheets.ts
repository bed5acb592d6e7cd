/**
 * A template on sheets of paper, true size: the way of the paper that takes fewest sheets, and over several with register
 * marks where one is too small; and on one sheet as large as it needs, for a file.
 */
import type { WrapCut } from '../../../geometry';
import type { Item } from '../../formats/drawing/drawing';
import { heightOf, widthOf } from '../../formats/drawing/drawing';
import { freeBox, HEADING, lying, MARGIN, type Paper, type Size, sizeFor, upright } from '../sheet/paper';
import { type Paragraphs, paragraphs } from '../sheet/paragraphs';
import { type Sheet, TRUE_SIZE } from '../sheet/sheet';
import { tiled } from '../sheet/tiles';
import { templateNotes } from './notes';
import { type Strip, type StripOptions, templateStrip } from './strip';

const JOINING =
  'On several sheets: cut each but the first on the line through its register marks, lay mark on mark and tape.';
/** Between notes and drawing. */
const GAP = 4;
/** The check bar with its words. */
const LEAST_WIDTH = 165;
/** Narrower than this, notes stand in one column. */
const TWO_COLUMNS = 180;

export function templateSheets(cut: WrapCut, options: StripOptions, paper: Paper): Sheet[] {
  const strip = templateStrip(cut, options);
  const ways = [upright(paper), lying(paper)].map((size) => sheetsOn(size, cut, strip, options));
  return ways[1]!.length < ways[0]!.length ? ways[1]! : ways[0]!;
}

function sheetsOn(size: Size, cut: WrapCut, strip: Strip, options: StripOptions): Sheet[] {
  const free = freeBox(size);
  const notes = (more: readonly string[]): Paragraphs =>
    paragraphs([...templateNotes(cut, strip, options.paperThickness, options.display), ...more], widthOf(free), 2);
  const room = (over: Paragraphs) => ({ width: widthOf(free), height: heightOf(free) - over.height - GAP });
  let over = notes([]);
  let tiling = tiled(strip.items, strip.box, room(over));
  if (tiling.tiles.length > 1) {
    over = notes([JOINING]);
    tiling = tiled(strip.items, strip.box, room(over));
  }
  const { tiles } = tiling;
  return tiles.map((tile, i): Sheet => {
    const across = free.left + (widthOf(free) - tile.width) / 2;
    const items: Item[] = [...over.at([free.left, free.top]), ...tile.at([across, free.top + over.height + GAP])];
    const part = tiles.length > 1 ? `, part ${i + 1} of ${tiles.length}` : '';
    return { ...size, title: `${cut.title}${part}`, scale: TRUE_SIZE, items };
  });
}

export function templateFile(cut: WrapCut, options: StripOptions): Sheet {
  const strip = templateStrip(cut, options);
  const width = Math.max(widthOf(strip.box), LEAST_WIDTH);
  const notes = templateNotes(cut, strip, options.paperThickness, options.display);
  const over = paragraphs(notes, width, width < TWO_COLUMNS ? 1 : 2);
  const size = sizeFor(width, over.height + GAP + heightOf(strip.box));
  const [tile] = tiled(strip.items, strip.box, { width, height: heightOf(strip.box) }).tiles;
  const across = MARGIN + (width - tile!.width) / 2;
  const top = MARGIN + HEADING;
  return {
    ...size,
    title: cut.title,
    scale: TRUE_SIZE,
    items: [...over.at([MARGIN, top]), ...tile!.at([across, top + over.height + GAP])],
  };
}
