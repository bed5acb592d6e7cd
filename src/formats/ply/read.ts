/**
 * PLY, text or binary of either byte order → triangles, nine numbers each, in the file's own unit. Faces with more corners are
 * cut into fans; whatever else the file tells of a vertex or a face is passed over.
 */
import type { TriangleSoup } from '../../../geometry';
import { MeshError, type ReadProgress, STRIDE } from '../mesh/meshError';
import { SoupBuilder } from '../mesh/soupBuilder';
import { type PlyElement, plyHeader } from './header';
import { cutShort, insistRoom, type Values, valuesOf } from './values';

/** More corners than any face has that was not miscounted. */
const MOST_CORNERS = 100_000;

/** @throws MeshError */
export function readPly(bytes: Uint8Array, progress?: ReadProgress): TriangleSoup {
  const header = plyHeader(bytes);
  const vertex = header.elements.find((e) => e.name === 'vertex');
  if (!vertex || vertex.count === 0) throw new MeshError('it holds no vertices; export the surface again');
  const face = header.elements.find((e) => e.name === 'face');
  if (!face || face.count === 0)
    throw new MeshError('it holds points and no faces; make a surface of them where it was scanned, and export that');
  for (const element of header.elements) insistRoom(header, element, bytes);
  const values = valuesOf(header, bytes);
  let places: Float32Array | null = null;
  for (const element of header.elements) {
    if (element === vertex) places = readVertices(element, values, progress);
    else if (element === face) {
      if (!places) throw new MeshError('its faces stand before its vertices; export it again');
      return readFaces(element, places, values, progress);
    } else skipElement(element, values);
  }
  throw cutShort('no faces come');
}

function readVertices(vertex: PlyElement, values: Values, progress?: ReadProgress): Float32Array {
  const axes = vertex.properties.map((p) => (p.lengthType === null ? ['x', 'y', 'z'].indexOf(p.name) : -1));
  for (const [k, name] of ['x', 'y', 'z'].entries())
    if (!axes.includes(k)) throw new MeshError(`its vertices have no ${name}`);
  const places = new Float32Array(3 * vertex.count);
  for (let i = 0; i < vertex.count; i++) {
    if (progress && i % STRIDE === 0) progress(values.part());
    for (let p = 0; p < axes.length; p++) {
      const { type, lengthType } = vertex.properties[p]!;
      const axis = axes[p]!;
      if (lengthType !== null) skipList(values, lengthType, type);
      else if (axis < 0) values.skip(type, 1);
      else {
        const value = values.next(type);
        if (!Number.isFinite(Math.fround(value)))
          throw new MeshError(
            `vertex ${i + 1} of ${vertex.count} has a coordinate that is ${value}, not a finite number`,
          );
        places[3 * i + axis] = value;
      }
    }
  }
  return places;
}

function readFaces(face: PlyElement, places: Float32Array, values: Values, progress?: ReadProgress): TriangleSoup {
  const isCorners = ({ name, lengthType }: PlyElement['properties'][number]): boolean =>
    lengthType !== null && (name === 'vertex_indices' || name === 'vertex_index');
  if (!face.properties.some(isCorners)) throw new MeshError('its faces do not say their corners (vertex_indices)');
  const soup = new SoupBuilder();
  const count = places.length / 3;
  for (let f = 0; f < face.count; f++) {
    if (progress && f % STRIDE === 0) progress(values.part());
    for (const property of face.properties) {
      const { type, lengthType } = property;
      if (lengthType === null) values.skip(type, 1);
      else if (!isCorners(property)) skipList(values, lengthType, type);
      else fan(soup, places, count, values, lengthType, type, f);
    }
  }
  return soup.soup();
}

function fan(
  soup: SoupBuilder,
  places: Float32Array,
  count: number,
  values: Values,
  lengthType: string,
  type: string,
  f: number,
): void {
  const corners = listLength(values, lengthType);
  let first = 0;
  let before = 0;
  for (let k = 0; k < corners; k++) {
    const own = values.next(type);
    if (!Number.isInteger(own) || own < 0 || own >= count)
      throw new MeshError(`face ${f + 1} names vertex ${own}; allowed: 0 to ${count - 1}`);
    if (k === 0) first = own;
    else if (k > 1) soup.add(places, first, before, own);
    before = own;
  }
}

function listLength(values: Values, lengthType: string): number {
  const length = values.next(lengthType);
  if (!Number.isInteger(length) || length < 0 || length > MOST_CORNERS)
    throw cutShort(`a list says it has ${length} numbers`);
  return length;
}

const skipList = (values: Values, lengthType: string, type: string): void =>
  values.skip(type, listLength(values, lengthType));

function skipElement(element: PlyElement, values: Values): void {
  // Of nothing there may be any number.
  if (element.properties.length === 0) return;
  for (let i = 0; i < element.count; i++)
    for (const { type, lengthType } of element.properties)
      if (lengthType === null) values.skip(type, 1);
      else skipList(values, lengthType, type);
}
