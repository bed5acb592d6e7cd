/**
 * PDF of drawings, a page each, true size: the page's unit is set to the millimetre and y turned down, so that numbers in
 * the file are the drawing's own. Standard fonts, no clock: same drawings, same bytes. The PDF library is loaded when asked.
 */
import type { PDFFont, PDFOperator } from 'pdf-lib';
import type { Edge } from '../../../geometry';
import type { Curve, Drawing, Group, Item, Text } from '../drawing/drawing';
import { drawnEdges } from '../drawing/drawnEdges';
import { textWidth } from '../drawing/textWidth';
import { winAnsi } from './winAnsi';

type Library = typeof import('pdf-lib');
type Fonts = { readonly regular: PDFFont; readonly bold: PDFFont };
type Pen = { readonly lib: Library; readonly fonts: Fonts; readonly out: PDFOperator[] };

export const POINTS_PER_MM = 72 / 25.4;

/** Any fixed day: the file says nothing of when it was made. */
const DAY = new Date(Date.UTC(2000, 0, 1));

export async function writePdf(pages: readonly Drawing[], title: string): Promise<Uint8Array<ArrayBuffer>> {
  const lib = await import('pdf-lib');
  const document = await lib.PDFDocument.create({ updateMetadata: false });
  document.setTitle(winAnsi(title));
  document.setProducer('Evenrun');
  document.setCreationDate(DAY);
  document.setModificationDate(DAY);
  // Programs that print otherwise shrink pages to what the printer can reach.
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(lib.PrintScaling.None);
  const fonts: Fonts = {
    regular: document.embedStandardFont(lib.StandardFonts.Helvetica),
    bold: document.embedStandardFont(lib.StandardFonts.HelveticaBold),
  };
  for (const { width, height, items } of pages) {
    const page = document.addPage([width * POINTS_PER_MM, height * POINTS_PER_MM]);
    page.node.setFontDictionary(lib.PDFName.of('regular'), fonts.regular.ref);
    page.node.setFontDictionary(lib.PDFName.of('bold'), fonts.bold.ref);
    const out: PDFOperator[] = [
      lib.concatTransformationMatrix(POINTS_PER_MM, 0, 0, -POINTS_PER_MM, 0, height * POINTS_PER_MM),
      lib.setLineJoin(lib.LineJoinStyle.Round),
    ];
    for (const item of items) draw(item, { lib, fonts, out });
    page.pushOperators(...out);
  }
  return new Uint8Array(await document.save());
}

function draw(item: Item, pen: Pen): void {
  if (item.kind === 'curve') curve(item, pen);
  else if (item.kind === 'text') words(item, pen);
  else group(item, pen);
}

function group({ move, clip, items }: Group, pen: Pen): void {
  const { lib, out } = pen;
  out.push(lib.pushGraphicsState());
  if (clip) {
    const { left, top, right, bottom } = clip;
    out.push(lib.rectangle(num(left), num(top), num(right - left), num(bottom - top)), lib.clip(), lib.endPath());
  }
  out.push(lib.concatTransformationMatrix(1, 0, 0, 1, num(move[0]), num(move[1])));
  for (const item of items) draw(item, pen);
  out.push(lib.popGraphicsState());
}

function curve(item: Curve, { lib, out }: Pen): void {
  const { vertices, closed, stroke, fill } = item;
  if (stroke) {
    out.push(lib.setLineWidth(num(stroke.width)));
    out.push(lib.setDashPattern((stroke.dash ?? []).map(num), 0));
  }
  if (fill) out.push(lib.setFillingGrayscaleColor(fill === 'white' ? 1 : 0));
  out.push(lib.moveTo(num(vertices[0]![0]), num(vertices[0]![1])));
  for (const { to, arc } of drawnEdges(item)) {
    if (arc) arcTo(arc, lib, out);
    else out.push(lib.lineTo(num(to[0]), num(to[1])));
  }
  if (closed) out.push(lib.closePath());
  out.push(stroke && fill ? lib.fillAndStroke() : fill ? lib.fill() : lib.stroke());
}

type Arc = NonNullable<Edge['arc']>;

/** An eighth of a circle by one cubic strays 4e-6 of the radius from it: 0.4 µm at 100 mm. */
const LARGEST_PIECE = Math.PI / 4;

function arcTo({ centre: [x, y], radius, start, turn }: Arc, lib: Library, out: PDFOperator[]): void {
  const pieces = Math.max(1, Math.ceil(Math.abs(turn) / LARGEST_PIECE - 1e-9));
  const step = turn / pieces;
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  for (let k = 0; k < pieces; k++) {
    const [a, b] = [start + k * step, start + (k + 1) * step];
    out.push(
      lib.appendBezierCurve(
        num(x + radius * Math.cos(a) - reach * Math.sin(a)),
        num(y + radius * Math.sin(a) + reach * Math.cos(a)),
        num(x + radius * Math.cos(b) + reach * Math.sin(b)),
        num(y + radius * Math.sin(b) - reach * Math.cos(b)),
        num(x + radius * Math.cos(b)),
        num(y + radius * Math.sin(b)),
      ),
    );
  }
}

function words({ text, at, size, anchor, bold, turn }: Text, { lib, fonts, out }: Pen): void {
  const font = bold ? fonts.bold : fonts.regular;
  const shown = winAnsi(text);
  const share = anchor === 'start' ? 0 : anchor === 'middle' ? 0.5 : 1;
  const back = share === 0 ? 0 : share * textWidth(shown, size, bold);
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  out.push(
    lib.beginText(),
    lib.setFillingGrayscaleColor(0),
    lib.setFontAndSize(lib.PDFName.of(bold ? 'bold' : 'regular'), num(size)),
    // Along the line, and up from it: y is down here, so letters are turned over once more to stand upright.
    lib.setTextMatrix(num(c), num(-s), num(-s), num(-c), num(at[0] - back * c), num(at[1] + back * s)),
    lib.showText(font.encodeText(shown)),
    lib.endText(),
  );
}

/** Ten nanometres. */
function num(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing cannot hold the number ${value}`);
  return Math.round(value * 1e5) / 1e5;
}
