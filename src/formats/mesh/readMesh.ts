/**
 * A mesh file of any kind that is known → triangles in its own frame and unit, and what there is to say of it. The content
 * decides what it is; a file whose name says otherwise is refused, since its unit may hang on the name. Runs in a worker as
 * well: it holds no more than the bytes and the triangles, and tells its progress.
 */
import { MM_PER_UNIT, soupBox, type TriangleSoup } from '../../../geometry';
import { readGlb } from '../glb/read';
import { readObj } from '../obj/read';
import { readPly } from '../ply/read';
import { readStl } from '../stl/read';
import { edgesOf } from './edges';
import { MeshError, type ReadProgress } from './meshError';
import { type MeshNotes, sizeWords } from './notes';
import { type MeshKind, sniff } from './sniff';
import { withoutEmpty } from './withoutEmpty';

export type ReadMesh = { readonly soup: TriangleSoup; readonly notes: MeshNotes };

export const MESH_EXTENSIONS = ['.stl', '.obj', '.ply', '.glb'] as const;

const READERS: Readonly<Record<MeshKind, (bytes: Uint8Array, progress?: ReadProgress) => TriangleSoup>> = {
  STL: readStl,
  OBJ: readObj,
  PLY: readPly,
  GLB: readGlb,
};

/** No engine bay reaches farther, mm; the design's own farthest coordinate as well. */
const FARTHEST = 100_000;
/** The reader's part of the work. */
const READING = 0.8;

/**
 * @param name as the file is called: its ending is held against what is in it
 * @throws MeshError, a clause that follows the name
 */
export function readMesh(name: string, bytes: Uint8Array, progress?: ReadProgress): ReadMesh {
  const named = /\.(stl|obj|ply|glb)$/i.exec(name)?.[1]?.toUpperCase() as MeshKind | undefined;
  const found = sniff(bytes);
  if (found && 'refusal' in found) throw new MeshError(found.refusal);
  const kind = found?.kind ?? named;
  if (!kind) throw new MeshError(`it is no mesh that is known; allowed: ${MESH_EXTENSIONS.join(', ')}`);
  // Under a name that says nothing anything is read, but for GLB: that it is in metres hangs on its name.
  if (named !== kind && (named || kind === 'GLB')) {
    const says = named ? `it is named as ${named} and is ${kind}` : 'it is GLB under another name';
    throw new MeshError(`${says}: name it with .${kind.toLowerCase()} if that is what it is, or export it again`);
  }
  const whole = READERS[kind](bytes, progress && ((part) => progress(READING * part)));
  const { soup, dropped } = withoutEmpty(whole);
  // Where the unit is still to be said, the smallest is taken: what is too far in it is too far in any.
  const refusal = tooFar(soupBox(whole), kind === 'GLB' ? MM_PER_UNIT.m : MM_PER_UNIT.mm);
  if (refusal) throw new MeshError(refusal);
  if (soup.length === 0)
    throw new MeshError(
      dropped > 0
        ? `none of its ${dropped} triangles has an area; export the surface again`
        : 'it holds no triangles; export the surface again',
    );
  const box = soupBox(soup);
  const edges = edgesOf(soup);
  progress?.(1);
  const notes: MeshNotes = { kind, triangles: soup.length / 9, dropped, box, ...edges, size: sizeWords(box, kind) };
  return { soup, notes };
}

/** Why a mesh in this unit reaches farther than anything can be placed; null where it does not. */
export function tooFar(box: readonly number[], mm: number): string | null {
  const far = box.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  if (far * mm <= FARTHEST) return null;
  const reach = (far * mm) / 1000;
  const km = Number((reach / 1000).toPrecision(3));
  const shown = km >= 1e6 ? 'at least a million km' : km >= 1 ? `${km} km` : `${Number(reach.toPrecision(3))} m`;
  const unit = mm === 1 ? 'even in millimetres' : 'in that unit';
  return `it reaches ${shown} from its origin ${unit}, at most ${FARTHEST / 1000} m are placed: is the unit right, does a stray point lie far off, or was it not moved to the origin? Mend it where it was made`;
}
