/** `check DESIGN [--json]`: measures every rule and says what fails, where, by how much. */
import { check } from '../../../geometry';
import { FAILS, HOLDS, type Io } from '../io';
import { printReport } from '../print/report';
import { loadDesign } from '../readDesign';

export function checkCommand(path: string, options: { json?: boolean }, io: Io): number {
  const { design, meshes } = loadDesign(path, io);
  const report = check(design, meshes);
  io.out(options.json ? `${JSON.stringify(report, null, 2)}\n` : printReport(design, report));
  return report.ok ? HOLDS : FAILS;
}
