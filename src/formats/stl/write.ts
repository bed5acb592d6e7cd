/**
 * Binary STL: 80 bytes of header, a count, then 50 bytes a triangle (normal, three corners, an unused word), all
 * little-endian single precision, counter-clockwise from outside. The form has no unit; ours are mm and the header says so.
 */
import { type Mesh, triangleCount } from '../../../geometry';

export const STL_HEADER_BYTES = 80;
export const STL_TRIANGLE_BYTES = 50;

/**
 * Same mesh and name, same bytes. Normals are of the corners as rounded, so that a reader who recomputes them agrees.
 * @param name of the part, for the header; what is not ASCII becomes `?`
 */
export function writeStl(mesh: Mesh, name: string): Uint8Array<ArrayBuffer> {
  const count = triangleCount(mesh);
  const bytes = new Uint8Array(STL_HEADER_BYTES + 4 + STL_TRIANGLE_BYTES * count);
  // Must not begin with "solid": many readers would take the file for text.
  const header = `evenrun, millimetres: ${name}`.replace(/[^\x20-\x7e]/g, '?').slice(0, STL_HEADER_BYTES);
  new TextEncoder().encodeInto(header.padEnd(STL_HEADER_BYTES), bytes);
  const view = new DataView(bytes.buffer);
  view.setUint32(STL_HEADER_BYTES, count, true);

  const p = Float32Array.from(mesh.positions);
  if (!p.every(Number.isFinite)) throw new RangeError(`${name} has a vertex that single precision cannot hold`);
  let at = STL_HEADER_BYTES + 4;
  for (let t = 0; t < count; t++, at += STL_TRIANGLE_BYTES) {
    const [a, b, c] = [0, 1, 2].map((k) => 3 * mesh.triangles[3 * t + k]!) as [number, number, number];
    const normal = normalOf(p, a, b, c);
    for (let axis = 0; axis < 3; axis++) {
      view.setFloat32(at + 4 * axis, normal[axis]!, true);
      view.setFloat32(at + 12 + 4 * axis, p[a + axis]!, true);
      view.setFloat32(at + 24 + 4 * axis, p[b + axis]!, true);
      view.setFloat32(at + 36 + 4 * axis, p[c + axis]!, true);
    }
  }
  return bytes;
}

function normalOf(p: Float32Array, a: number, b: number, c: number): readonly number[] {
  const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
  const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}
