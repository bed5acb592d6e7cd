/** `copes/ID.svg`: a template to wrap round the tube for every cut that is not square, each on one sheet, true size. */
import type { WrapCut } from '../../geometry';
import { writeSvg } from '../formats/svg/write';
import type { NamedFile } from '../formats/zip/zip';
import type { PaperOptions } from './packet/packet';
import { framed, type Stamp } from './sheet/sheet';
import { templateFile } from './templates/templateSheets';

export const copes = (cuts: readonly WrapCut[], options: PaperOptions, stamp: Stamp): NamedFile[] =>
  cuts.map((cut) => ({
    name: `copes/${cut.id}.svg`,
    bytes: new TextEncoder().encode(
      writeSvg(framed(templateFile(cut, options), stamp), `${stamp.design}: ${cut.title}`),
    ),
  }));
