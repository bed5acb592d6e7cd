/**
 * A template on sheets of paper, true size: the way of the paper that takes fewest sheets, and over several with register
 * marks where one is too small; and on one sheet as large as it needs, for a file.
 */
import type { WrapCut } from '../../../geometry';
import type { Item } from '../../formats/drawing/drawing';
import { heightOf, widthOf } from '../../formats/drawing/drawing';
import { freeBox, HEADING, lying, MARGIN, type Paper, type Size, sizeFor, upright } from '../sheet/paper';
import { paragraphs } from '../sheet/paragraphs';
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
  const ways = [upright(paper), lying(paper)].flatMap((size) => [
    withNotes(size, cut, strip, options),
    notesApart(size, cut, strip, options),
  ]);
  return ways.reduce((best, way) => (way.length < best.length ? way : best));
}

/** Notes over the drawing, on every sheet that it takes. */
function withNotes(size: Size, cut: WrapCut, strip: Strip, options: StripOptions): Sheet[] {
  const notes = templateNotes(cut, strip, options.paperThickness, options.display);
  const one = tilesUnder(notes, size, cut, strip);
  return one.length === 1 ? one : tilesUnder([...notes, JOINING], size, cut, strip);
}

/** A sheet of notes first, so that the drawing has the rest to itself. */
function notesApart(size: Size, cut: WrapCut, strip: Strip, options: StripOptions): Sheet[] {
  const notes = templateNotes(cut, strip, options.paperThickness, options.display);
  const free = freeBox(size);
  const items = paragraphs(notes, widthOf(free), 2).at([free.left, free.top]);
  return [{ ...size, title: `${cut.title}, notes`, scale: '', items }, ...tilesUnder([JOINING], size, cut, strip)];
}

function tilesUnder(notes: readonly string[], size: Size, cut: WrapCut, strip: Strip): Sheet[] {
  const free = freeBox(size);
  const over = paragraphs(notes, widthOf(free), notes.length > 1 ? 2 : 1);
  const room = { width: widthOf(free), height: heightOf(free) - over.height - GAP };
  const { tiles } = tiled(strip.items, strip.box, room);
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
