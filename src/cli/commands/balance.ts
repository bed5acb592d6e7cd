/** `balance DESIGN -o OUT [--json]`: the nearest design in which every rule holds; the best attempt where there is none. */
import { resolve } from 'node:path';
import { type BalanceResult, balance, lengthWindows, type Meshes, withReach } from '../../../geometry';
import { writeDesign } from '../../../shared/design/write';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io } from '../io';
import { printBalanced } from '../print/balanced';
import { loadDesign } from '../readDesign';

export function balanceCommand(path: string, options: { output: string; json?: boolean }, io: Io): number {
  const output = resolve(io.cwd, options.output);
  insistWritable(output);
  const { design, meshes } = loadDesign(path, io);
  const result = withWhatCanBeHad(balance(design, meshes), meshes);
  writeWhole(output, writeDesign(result.design));

  const { report, iterations, moved, limits } = result;
  const answer = { ...report, iterations, moved, limits, output: options.output };
  io.out(options.json ? `${JSON.stringify(answer, null, 2)}\n` : printBalanced(result, options.output));
  return report.ok ? HOLDS : FAILS;
}

/** Where lengths stay off, which runner stands in the way and what could be had instead. */
function withWhatCanBeHad(result: BalanceResult, meshes: Meshes): BalanceResult {
  const { design, report } = result;
  if (!report.problems.some((p) => p.rule === 'balance')) return result;
  return { ...result, report: withReach(report, lengthWindows(design, meshes), design) };
}
