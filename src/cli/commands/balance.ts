/** `balance DESIGN -o OUT [--json]`: the nearest design in which every rule holds; the best attempt where there is none. */
import { resolve } from 'node:path';
import { balance } from '../../../geometry';
import { writeDesign } from '../../../shared/design/write';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io } from '../io';
import { printBalanced } from '../print/balanced';
import { loadDesign } from '../readDesign';

export function balanceCommand(path: string, options: { output: string; json?: boolean }, io: Io): number {
  const output = resolve(io.cwd, options.output);
  insistWritable(output);
  const { design, meshes } = loadDesign(path, io);
  const result = balance(design, meshes);
  writeWhole(output, writeDesign(result.design));

  const { report, iterations, moved, limits } = result;
  const answer = { ...report, iterations, moved, limits, output: options.output };
  io.out(options.json ? `${JSON.stringify(answer, null, 2)}\n` : printBalanced(result, options.output));
  return report.ok ? HOLDS : FAILS;
}
