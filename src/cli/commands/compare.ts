/** `compare A B [--json]`: what differs between two versions of a design. Exit code 0 where nothing does, 1 where something. */
import { compareDesigns } from '../../../geometry';
import { FAILS, HOLDS, type Io } from '../io';
import { printComparison } from '../print/comparison';
import { loadDesign } from '../readDesign';

export function compareCommand(first: string, second: string, options: { json?: boolean }, io: Io): number {
  const before = loadDesign(first, io);
  const after = loadDesign(second, io);
  const comparison = compareDesigns(before.design, after.design, { before: before.meshes, after: after.meshes });
  io.out(
    options.json
      ? `${JSON.stringify(comparison, null, 2)}\n`
      : printComparison(comparison, after.design.display ?? 'mm'),
  );
  return comparison.same ? HOLDS : FAILS;
}
