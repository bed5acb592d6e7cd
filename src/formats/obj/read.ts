/**
 * OBJ → triangles, nine numbers each, in the file's own unit: its vertices and faces, all groups and objects joined. Faces with
 * more corners are cut into fans. Materials and whatever other files it names are passed over, never looked for.
 */
import type { TriangleSoup } from '../../../geometry';
import { MeshError, type ReadProgress, STRIDE } from '../mesh/meshError';
import { Numbers, SoupBuilder } from '../mesh/soupBuilder';
import { TextLines } from '../mesh/textLines';

/** What begins other lines: texture, normals, lines, groups, materials, curves. */
const PASSED = new Set(
  'vt vn vp p l g o s mg usemtl mtllib usemap maplib curv curv2 surf parm trim hole scrv sp end con cstype deg bmat step bevel c_interp d_interp lod shadow_obj trace_obj ctech stech'.split(
    ' ',
  ),
);

/** @throws MeshError */
export function readObj(bytes: Uint8Array, progress?: ReadProgress): TriangleSoup {
  const places = new Numbers();
  const soup = new SoupBuilder();
  const lines = new TextLines(bytes);
  const refuse = (what: string) => new MeshError(`line ${lines.line}: ${what}`);
  while (lines.nextLine()) {
    if (progress && lines.line % STRIDE === 0) progress(lines.position / bytes.length);
    if (!lines.hasWord()) continue;
    const word = lines.word();
    if (word === 'v') {
      const x = lines.number();
      const y = lines.number();
      const z = lines.number();
      if (!Number.isFinite(Math.fround(x) + Math.fround(y) + Math.fround(z)))
        throw refuse(
          `a vertex must be three finite numbers, found "${lines.afterWord()}": mend that line, or export the surface again`,
        );
      places.push(x);
      places.push(y);
      places.push(z);
    } else if (word === 'f') addFace(lines, places, soup, refuse);
    else if (!word.startsWith('#') && !PASSED.has(word))
      throw refuse(`"${word.slice(0, 20)}" is no word of an OBJ file`);
  }
  if (places.length === 0) throw new MeshError('it holds no vertices; export the surface again');
  if (soup.count === 0)
    throw new MeshError('it holds points and no faces; make a surface of them where it was made, and export that');
  return soup.soup();
}

/** Corners are numbered from 1, or back from the last vertex by negative numbers; a face may run on over lines that end in \. */
function addFace(lines: TextLines, places: Numbers, soup: SoupBuilder, refuse: (what: string) => MeshError): void {
  const count = places.length / 3;
  let [first, before] = [0, 0];
  let corners = 0;
  while (lines.hasWord()) {
    if (lines.runsOn()) {
      if (!lines.nextLine()) break;
      continue;
    }
    const named = lines.index();
    const own = named < 0 ? count + named : named - 1;
    if (!(own >= 0 && own < count))
      throw refuse(`a face names a vertex that is not among the ${count} before it; found "${lines.afterWord()}"`);
    if (corners === 0) first = own;
    else if (corners > 1) soup.add(places.values, first, before, own);
    before = own;
    corners++;
  }
  if (corners < 3) throw refuse(`a face has ${corners} corners; it must have three or more`);
}
