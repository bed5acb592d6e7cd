/** A template of one's own as a file: SVG, one sheet as large as it needs; PDF, on the printer's paper. True size. */
import { writePdf } from '../../formats/pdf/write';
import { writeSvg } from '../../formats/svg/write';
import type { Paper } from '../sheet/paper';
import { framed, type Stamp } from '../sheet/sheet';
import type { StripOptions } from './strip';
import { templateFile, templateSheets } from './templateSheets';
import type { WishedTemplate } from './wishes';

/** It belongs to no design. */
const STAMP: Stamp = { design: 'Wrap-around template' };

export const wishedSvg = ({ cut }: WishedTemplate, options: StripOptions): string =>
  writeSvg(framed(templateFile(cut, options), STAMP), cut.title);

export function wishedPdf(
  { cut }: WishedTemplate,
  options: StripOptions,
  paper: Paper,
): Promise<Uint8Array<ArrayBuffer>> {
  const sheets = templateSheets(cut, options, paper);
  return writePdf(
    sheets.map((sheet, i) => framed(sheet, STAMP, { page: i + 1, of: sheets.length })),
    cut.title,
  );
}
