/**
 * The triangles of a soup that reach into a box along the soup's own axes, whole as they are. Whether one does is found by the
 * thirteen axes that can keep a triangle and a box apart (Akenine-Möller, 2001). Any unit, the same for both.
 */
import type { Vec3 } from '../../shared/vec3';
import type { TriangleSoup } from './soup';

/** @param low, high two opposite corners, in any order */
export function cropSoup(soup: TriangleSoup, low: Vec3, high: Vec3): TriangleSoup {
  const middle = low.map((x, k) => (x + high[k]!) / 2) as unknown as Vec3;
  const half = low.map((x, k) => Math.abs(high[k]! - x) / 2) as unknown as Vec3;
  const kept = new Uint32Array(soup.length / 9);
  let count = 0;
  for (let t = 0; t < kept.length; t++) if (reaches(soup, 9 * t, middle, half)) kept[count++] = t;
  const cropped = new Float32Array(9 * count);
  for (let t = 0; t < count; t++) {
    const from = 9 * kept[t]!;
    for (let k = 0; k < 9; k++) cropped[9 * t + k] = soup[from + k]!;
  }
  return cropped;
}

/** Of the triangle being looked at, from the box's middle. */
const v = new Float64Array(9);

function reaches(soup: TriangleSoup, o: number, middle: Vec3, half: Vec3): boolean {
  for (let k = 0; k < 3; k++) {
    const a = soup[o + k]! - middle[k]!;
    const b = soup[o + 3 + k]! - middle[k]!;
    const c = soup[o + 6 + k]! - middle[k]!;
    const h = half[k]!;
    if (Math.min(a, b, c) > h || Math.max(a, b, c) < -h) return false;
    v[k] = a;
    v[3 + k] = b;
    v[6 + k] = c;
  }
  for (let e = 0; e < 9; e += 3) {
    const n = (e + 3) % 9;
    const x = v[n]! - v[e]!;
    const y = v[n + 1]! - v[e + 1]!;
    const z = v[n + 2]! - v[e + 2]!;
    if (isApart(0, -z, y, half) || isApart(z, 0, -x, half) || isApart(-y, x, 0, half)) return false;
  }
  const [ux, uy, uz] = [v[3]! - v[0]!, v[4]! - v[1]!, v[5]! - v[2]!];
  const [wx, wy, wz] = [v[6]! - v[0]!, v[7]! - v[1]!, v[8]! - v[2]!];
  return !isApart(uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx, half);
}

/** An axis of no length keeps nothing apart: all its numbers are 0. */
function isApart(x: number, y: number, z: number, half: Vec3): boolean {
  const a = x * v[0]! + y * v[1]! + z * v[2]!;
  const b = x * v[3]! + y * v[4]! + z * v[5]!;
  const c = x * v[6]! + y * v[7]! + z * v[8]!;
  const reach = half[0] * Math.abs(x) + half[1] * Math.abs(y) + half[2] * Math.abs(z);
  return Math.min(a, b, c) > reach || Math.max(a, b, c) < -reach;
}
