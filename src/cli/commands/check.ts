/**
 * `check DESIGN [--json]`: measures every rule and says what fails, where, by how much; what lengths every runner and group
 * could have; what is found about the space it must fit; and whether every part can be made. The exit code speaks of rules alone.
 */
import {
  checkHeader,
  headerParts,
  lengthWindows,
  resolveHeader,
  roomReport,
  withAccess,
  withReach,
} from '../../../geometry';
import { FAILS, HOLDS, type Io } from '../io';
import { printReport } from '../print/report';
import { printRoom, roomFields } from '../print/room/room';
import { withWindows } from '../print/windows';
import { loadDesign } from '../readDesign';

export async function checkCommand(path: string, options: { json?: boolean }, io: Io): Promise<number> {
  const { design, meshes } = loadDesign(path, io);
  const header = resolveHeader(design);
  const windows = lengthWindows(design, meshes);
  const held = checkHeader(header, meshes);
  const room = roomReport(header, meshes);
  // Where it was not asked for access there is nothing to reach.
  const report = withReach(withAccess(held, design, room.access?.entries ?? []), windows, design);
  const { notMade, warnings } = await headerParts(header);
  const parts = { notMade, warnings };
  const answer = () => `${JSON.stringify({ ...withWindows(report, windows), parts, ...roomFields(room) }, null, 2)}\n`;
  io.out(options.json ? answer() : printReport(design, report, windows, notMade, printRoom(header, room)));
  return report.ok ? HOLDS : FAILS;
}
