/**
 * `check DESIGN [--json]`: measures every rule and says what fails, where, by how much; what lengths every runner and group
 * could have; and whether every part can be made, which the exit code does not speak of.
 */
import { check, headerParts, lengthWindows, resolveHeader, withReach } from '../../../geometry';
import { FAILS, HOLDS, type Io } from '../io';
import { printReport } from '../print/report';
import { withWindows } from '../print/windows';
import { loadDesign } from '../readDesign';

export async function checkCommand(path: string, options: { json?: boolean }, io: Io): Promise<number> {
  const { design, meshes } = loadDesign(path, io);
  const windows = lengthWindows(design, meshes);
  const report = withReach(check(design, meshes), windows, design);
  const { notMade, warnings } = await headerParts(resolveHeader(design));
  const answer = () =>
    `${JSON.stringify({ ...withWindows(report, windows), parts: { notMade, warnings } }, null, 2)}\n`;
  io.out(options.json ? answer() : printReport(design, report, windows, notMade));
  return report.ok ? HOLDS : FAILS;
}
