/** The shop folder as one zip. Loaded on demand: most visits never export. */
import type { Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { zipFolder } from '../../formats/zip/zip';
import { type PaperChoice, shopFolder } from '../../shop/shopFolder';
import type { ShopAnswer } from './messages';

/** @param folder the folder that the zip unpacks to @param see told what is being made next */
export async function shopZip(
  design: Design,
  meshes: Meshes,
  folder: string,
  see: (what: string) => void,
  onPaper: PaperChoice = {},
): Promise<ShopAnswer> {
  const { files, problems, leftOut, warnings } = await shopFolder(design, meshes, { ...onPaper, see });
  see('zip');
  return {
    zip: new Uint8Array(zipFolder(folder, files)),
    fileCount: files.length,
    problemCount: problems.length,
    leftOut: leftOut.map((part) => `${part.name}: ${part.why}`),
    warnings: warnings.map(({ part, message }) => `${part}: ${message}`),
  };
}
