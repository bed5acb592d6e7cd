/**
 * `check DESIGN [--json]`: measures every rule and says what fails, where, by how much; and what lengths every runner and
 * group could have.
 */
import { check, lengthWindows, withReach } from '../../../geometry';
import { FAILS, HOLDS, type Io } from '../io';
import { printReport } from '../print/report';
import { withWindows } from '../print/windows';
import { loadDesign } from '../readDesign';

export function checkCommand(path: string, options: { json?: boolean }, io: Io): number {
  const { design, meshes } = loadDesign(path, io);
  const windows = lengthWindows(design, meshes);
  const report = withReach(check(design, meshes), windows, design);
  const answer = () => `${JSON.stringify(withWindows(report, windows), null, 2)}\n`;
  io.out(options.json ? answer() : printReport(design, report, windows));
  return report.ok ? HOLDS : FAILS;
}
