/** `balance DESIGN -o OUT [--json]`: the nearest design in which every rule holds; the best attempt where there is none. */
import { resolve } from 'node:path';
import { balance, limitWords } from '../../../geometry';
import { writeDesign } from '../../../shared/design/write';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io } from '../io';
import { columns } from '../print/columns';
import { measuresIn } from '../print/measures';
import { printReport } from '../print/report';
import { loadDesign } from '../readDesign';

export function balanceCommand(path: string, options: { output: string; json?: boolean }, io: Io): number {
  const output = resolve(io.cwd, options.output);
  insistWritable(output);
  const { design, meshes } = loadDesign(path, io);
  const result = balance(design, meshes);
  writeWhole(output, writeDesign(result.design));

  const { report, iterations, moved, limits } = result;
  if (options.json)
    io.out(`${JSON.stringify({ ...report, iterations, moved, limits, output: options.output }, null, 2)}\n`);
  else {
    const { length, unit } = measuresIn(design.display);
    const rows = [['runner', `moved ${unit}`], ...moved.map(({ id, distance }) => [id, length(distance)])];
    io.out(`${printReport(result.design, report)}\n`);
    io.out(`How far points moved at most\n${columns(rows, ['left', 'right'])}\n\n`);
    if (limits.length > 0)
      io.out(
        `What stands at its limit\n${limitWords(limits)
          .map((w) => `  ${w}\n`)
          .join('')}\n`,
      );
    io.out(`${report.ok ? 'Balanced' : 'Best attempt, not every rule holds'}: written to ${options.output}\n`);
  }
  return report.ok ? HOLDS : FAILS;
}
