/**
 * Triangles of a mesh file as nine numbers each (three corners), in the file's own frame and unit. Single precision: files hold
 * no more, within 100 m it is good to 0.004 mm, and two million triangles then take 72 MB. Order and doubles mean nothing.
 */
import type { LengthUnit, MeshSurrounding } from '../../shared/design/types';

export type TriangleSoup = Float32Array;

/** By file name. */
export type Meshes = ReadonlyMap<string, TriangleSoup>;

export const MM_PER_UNIT: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };

/** Millimetres where nothing is said, but for GLB, whose standard says metres (glTF 2.0, 3.4). */
export const unitOf = ({ unit, file }: Pick<MeshSurrounding, 'unit' | 'file'>): LengthUnit =>
  unit ?? (/\.glb$/i.test(file) ? 'm' : 'mm');

/** Low x, y, z, high x, y, z; infinite the other way round where there are no triangles. */
export function soupBox(soup: ArrayLike<number>): [number, number, number, number, number, number] {
  let [lx, ly, lz] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [hx, hy, hz] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < soup.length; i += 3) {
    const x = soup[i]!;
    const y = soup[i + 1]!;
    const z = soup[i + 2]!;
    if (x < lx) lx = x;
    if (x > hx) hx = x;
    if (y < ly) ly = y;
    if (y > hy) hy = y;
    if (z < lz) lz = z;
    if (z > hz) hz = z;
  }
  return [lx, ly, lz, hx, hy, hz];
}
