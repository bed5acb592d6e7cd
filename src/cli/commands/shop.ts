/** `shop DESIGN -o FOLDER`: writes everything the fabricator needs, and says what is missing and why. */
import { resolve } from 'node:path';
import { shopFolder } from '../../shop/shopFolder';
import { FAILS, HOLDS, type Io } from '../io';
import { type PaperArguments, paperOf } from '../paperArguments';
import { columns } from '../print/columns';
import { remarksPart } from '../print/making/making';
import { findings } from '../print/report';
import { loadDesign } from '../readDesign';
import { insistFolder, writeFolder } from '../writeFolder';

export type ShopArguments = PaperArguments & { readonly output: string };

export async function shopCommand(path: string, options: ShopArguments, io: Io): Promise<number> {
  const paper = paperOf(options);
  const folder = resolve(io.cwd, options.output);
  insistFolder(folder);
  const { design, meshes } = loadDesign(path, io);
  const { files, problems, leftOut, warnings, remarks } = await shopFolder(design, meshes, paper);
  const { removed, kept } = writeFolder(folder, files);

  const parts = [findings(problems)];
  if (leftOut.length > 0)
    parts.push(
      `Left out\n${columns(
        leftOut.map((n) => [n.name, n.why]),
        ['left', 'left'],
      )}`,
    );
  if (warnings.length > 0)
    parts.push(
      `To know\n${columns(
        warnings.map((w) => [w.where, w.message]),
        ['left', 'left'],
      )}`,
    );
  if (remarks.length > 0) parts.push(remarksPart(remarks));
  const sizes = files.map(({ name, bytes }) => [name, `${Math.ceil(bytes.length / 1000)} kB`]);
  parts.push(`Written to ${options.output}\n${columns(sizes, ['left', 'right'])}`);
  if (removed.length > 0) parts.push(`Removed, of an earlier run: ${removed.join(', ')}`);
  if (kept.length > 0) parts.push(`Kept, of an earlier run but changed since: ${kept.join(', ')}`);
  parts.push('manifest.json lists every file with its checksum, and what could not be made and why.');
  io.out(`${parts.join('\n\n')}\n`);
  return problems.length === 0 && leftOut.length === 0 ? HOLDS : FAILS;
}
