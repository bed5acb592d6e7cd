/**
 * GLB (glTF 2.0 in one file) → triangles, nine numbers each, in metres: all meshes of its scene where their nodes put them.
 * Only positions are read; materials, skins and movements are passed over.
 */
import type { TriangleSoup } from '../../../geometry';
import { MeshError, MOST_TRIANGLES, type ReadProgress, tooMany } from '../mesh/meshError';
import { countOf, indicesOf, placesOf } from './accessors';
import { type Glb, listOf, type Primitive, takeApart } from './container';
import { type Matrix, standings } from './nodes';

const TRIANGLES = 4;
const STRIP = 5;
const FAN = 6;

type Piece = {
  readonly primitive: Primitive;
  readonly matrix: Matrix;
  readonly what: string;
  readonly count: number;
  readonly vertices: number;
};

/** Each triangle may have corners of its own; more are a file that makes work for nothing. */
const MOST_VERTICES = 3 * MOST_TRIANGLES;

/** @throws MeshError */
export function readGlb(bytes: Uint8Array, progress?: ReadProgress): TriangleSoup {
  const glb = takeApart(bytes);
  const pieces = piecesOf(glb);
  const total = pieces.reduce((sum, p) => sum + p.count, 0);
  if (total > MOST_TRIANGLES) throw tooMany(total);
  if (total === 0) throw new MeshError('it holds no triangles; export the surface again');
  const vertices = pieces.reduce((sum, p) => sum + p.vertices, 0);
  if (vertices > MOST_VERTICES)
    throw new MeshError(
      `it holds ${vertices} vertices for ${total} triangles, at most ${MOST_VERTICES} are read; export it again`,
    );
  const soup = new Float32Array(9 * total);
  let at = 0;
  for (const piece of pieces) {
    write(glb, piece, soup, 9 * at);
    at += piece.count;
    progress?.(at / total);
  }
  return soup;
}

/** What of it is made of triangles, counted from the description before room is made for it. */
function piecesOf(glb: Glb): Piece[] {
  const meshes = listOf<{ primitives?: unknown }>(glb.json.meshes);
  return standings(glb).flatMap(({ mesh, matrix }) => {
    const found = meshes[mesh];
    if (!found) throw new MeshError(`its scene names mesh ${mesh}, which is not there`);
    return listOf<Primitive>(found.primitives).flatMap((primitive, i): Piece[] => {
      const { mode = TRIANGLES, attributes, indices } = primitive;
      if (mode !== TRIANGLES && mode !== STRIP && mode !== FAN) return [];
      const what = `mesh ${mesh}, part ${i}`;
      if (attributes?.POSITION === undefined) throw new MeshError(`${what}: it has no positions`);
      const corners = countOf(glb, indices ?? attributes.POSITION, what);
      const vertices = countOf(glb, attributes.POSITION, what);
      const count = mode === TRIANGLES ? Math.floor(corners / 3) : Math.max(0, corners - 2);
      return [{ primitive, matrix, what, count, vertices }];
    });
  });
}

function write(glb: Glb, { primitive, matrix: m, what, count }: Piece, soup: TriangleSoup, from: number): void {
  const { mode = TRIANGLES, attributes, indices } = primitive;
  const places = placesOf(glb, attributes!.POSITION, what);
  const vertices = places.length / 3;
  for (let o = 0; o < places.length; o += 3) {
    const [x, y, z] = [places[o]!, places[o + 1]!, places[o + 2]!];
    for (let k = 0; k < 3; k++) places[o + k] = m[k]! * x + m[4 + k]! * y + m[8 + k]! * z + m[12 + k]!;
  }
  const corners = indices === undefined ? null : indicesOf(glb, indices, vertices, what);
  const corner = (i: number): number => 3 * (corners ? corners[i]! : i);
  let o = from;
  const put = (at: number): void => {
    for (let k = 0; k < 3; k++) soup[o++] = places[at + k]!;
  };
  for (let t = 0; t < count; t++) {
    const first = mode === TRIANGLES ? 3 * t : mode === STRIP ? t : 0;
    const second = mode === FAN ? t + 1 : first + 1;
    put(corner(first));
    put(corner(second));
    put(corner(second + 1));
  }
}
