/**
 * Every part as a file of its own, `runners/ID.stl`, `collectors/ID NAME.stl` and so on, and `header.stl`, all of them as
 * shells of one file, not fused. Each mesh is judged as the file will hold it; an unsound one is left out and named rather
 * than handed to a slicer. mm, design frame.
 */
import {
  type HeaderPart,
  joinMeshes,
  type Made,
  type Mesh,
  meshProblems,
  placedMesh,
  roundedToFloat32,
} from '../../geometry';
import { writeStl } from '../formats/stl/write';
import type { NamedFile } from '../formats/zip/zip';
import type { NotMade } from './part';

const HEADER_STL = 'header.stl';

/** The folder that a part's file lies in, by what it belongs to. */
export const PART_FOLDERS = { runner: 'runners', flange: 'flanges', port: 'transitions', merge: 'collectors' } as const;

/** A tube, a plate and a transition are all there is of their owner; the pieces of one with several say which. */
export function partFile({ of, name }: Pick<HeaderPart, 'of' | 'name'>): string {
  const alone = ['tube', 'plate', 'transition'].includes(name) && of.kind !== 'merge';
  return `${PART_FOLDERS[of.kind]}/${of.id}${alone ? '' : ` ${name}`}.stl`;
}

/** What a part that could not be made leaves out, from where in the design it belongs. */
function missingFiles(where: string): string {
  const [list, id] = where.split('/');
  const own: Readonly<Record<string, string>> = {
    merges: `collectors/${id} *.stl and *.dxf, copes/${id} *.svg`,
    flanges: `flanges/${id}*.stl`,
    ports: `transitions/${id}.stl`,
    runners: `runners/${id}.stl`,
  };
  return `${own[list!] ?? where}, its shells in ${HEADER_STL}`;
}

export function solids({ parts, notMade: unmade }: Made): { files: NamedFile[]; notMade: NotMade[] } {
  const sound: Mesh[] = [];
  const files: NamedFile[] = [];
  const notMade: NotMade[] = unmade.map(({ where, message }) => ({
    name: missingFiles(where),
    why: `${where}: ${message}`,
  }));
  for (const part of parts) {
    const mesh = placedMesh(part);
    const faults = meshProblems(roundedToFloat32(mesh));
    const name = partFile(part);
    if (faults.length > 0) {
      notMade.push({ name, why: `Left out, of ${HEADER_STL} too, because as a solid ${faults.join(', ')}.` });
      continue;
    }
    sound.push(mesh);
    files.push({ name, bytes: writeStl(mesh, part.id) });
  }
  if (sound.length > 0)
    files.push({ name: HEADER_STL, bytes: writeStl(joinMeshes(sound), 'header, one shell a part') });
  else notMade.push({ name: HEADER_STL, why: 'There is no part to put in it.' });
  return { files, notMade };
}
