/** The shop folder as one zip. Loaded on demand: most visits never export. */
import type { Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { zipFolder } from '../../formats/zip/zip';
import { shopFolder } from '../../shop/shopFolder';
import type { ShopAnswer } from './messages';

/** @param folder the folder that the zip unpacks to */
export async function shopZip(design: Design, meshes: Meshes, folder: string): Promise<ShopAnswer> {
  const { files, problems, leftOut } = await shopFolder(design, meshes);
  return {
    zip: new Uint8Array(zipFolder(folder, files)),
    fileCount: files.length,
    problemCount: problems.length,
    leftOut: leftOut.map((part) => `${part.name}: ${part.why}`),
  };
}
