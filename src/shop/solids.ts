/** `runners/ID.stl`, a tube a file, and `header.stl`, all of them as shells of one file, not fused. mm, design frame. */
import { joinMeshes, type Mesh, meshProblems, roundedToFloat32, tubeSolid } from '../../geometry';
import { writeStl } from '../formats/stl/write';
import type { NamedFile } from '../formats/zip/zip';
import type { NotMade, Part } from './part';

const HEADER_STL = 'header.stl';
const runnerStl = (id: string): string => `runners/${id}.stl`;

/** Each mesh is judged as the file will hold it; an unsound one is left out and named rather than handed to a slicer. */
export function solids(parts: readonly Part[]): { files: NamedFile[]; notMade: NotMade[] } {
  const sound: Mesh[] = [];
  const files: NamedFile[] = [];
  const notMade: NotMade[] = [];
  for (const { id, line, resolved } of parts) {
    const { outsideDiameter, wall } = resolved.tube;
    const mesh = tubeSolid(line, { outsideDiameter, wall, up: resolved.start.up });
    const faults = meshProblems(roundedToFloat32(mesh));
    if (faults.length > 0) {
      notMade.push({
        name: runnerStl(id),
        why: `Left out, of ${HEADER_STL} too, because as a solid ${faults.join(', ')}.`,
      });
      continue;
    }
    sound.push(mesh);
    files.push({ name: runnerStl(id), bytes: writeStl(mesh, `runner ${id}`) });
  }
  if (sound.length > 0)
    files.push({ name: HEADER_STL, bytes: writeStl(joinMeshes(sound), 'header, one shell a part') });
  else notMade.push({ name: HEADER_STL, why: 'There is no runner to put in it.' });
  return { files, notMade };
}
