/**
 * Distance of a point to a triangle that lies in a flat array, nine numbers a triangle, by its regions (Ericson, Real-Time
 * Collision Detection, 5.1.5); convex in the point. Any unit of length. A triangle whose corners lie on a line has no regions
 * to speak of (and would divide by its area): it is its longest edge, told once by `triangleKind`. Nothing is allocated here.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Field } from './convexMinimum';

/** Corners as they come from a file, in single precision, or as they stand in the design. */
export type Corners = Float32Array | Float64Array;

/**
 * Height over longest edge under which a triangle is no more than that edge: of a metre it is moved by a hundredth of a
 * millimetre at most. A ratio, because a file's own unit may be inches or metres.
 */
const SLIVER = 1e-5;

/** 0: a sound triangle. 1, 2, 3: no more than its edge ab, bc, ca. */
export type TriangleKind = 0 | 1 | 2 | 3;

/** @param o where the triangle's nine numbers begin */
export function triangleKind(soup: Corners, o: number): TriangleKind {
  const abx = soup[o + 3]! - soup[o]!,
    aby = soup[o + 4]! - soup[o + 1]!,
    abz = soup[o + 5]! - soup[o + 2]!;
  const acx = soup[o + 6]! - soup[o]!,
    acy = soup[o + 7]! - soup[o + 1]!,
    acz = soup[o + 8]! - soup[o + 2]!;
  const ab = abx * abx + aby * aby + abz * abz;
  const ac = acx * acx + acy * acy + acz * acz;
  const bc = (acx - abx) ** 2 + (acy - aby) ** 2 + (acz - abz) ** 2;
  const nx = aby * acz - abz * acy,
    ny = abz * acx - abx * acz,
    nz = abx * acy - aby * acx;
  const longest = Math.max(ab, bc, ac);
  if (nx * nx + ny * ny + nz * nz > SLIVER * SLIVER * longest * longest) return 0;
  if (ab === longest) return 1;
  return bc === longest ? 2 : 3;
}

/** @param place three numbers: the triangle's nearest place to the point */
export function squaredToTriangle(
  soup: Corners,
  o: number,
  kind: number,
  x: number,
  y: number,
  z: number,
  place: Float64Array,
): number {
  const ax = soup[o]!,
    ay = soup[o + 1]!,
    az = soup[o + 2]!;
  const bx = soup[o + 3]!,
    by = soup[o + 4]!,
    bz = soup[o + 5]!;
  const cx = soup[o + 6]!,
    cy = soup[o + 7]!,
    cz = soup[o + 8]!;
  const abx = bx - ax,
    aby = by - ay,
    abz = bz - az;
  const acx = cx - ax,
    acy = cy - ay,
    acz = cz - az;
  const apx = x - ax,
    apy = y - ay,
    apz = z - az;
  if (kind !== 0) {
    if (kind === 1) return toEdge(ax, ay, az, abx, aby, abz, x, y, z, place);
    if (kind === 2) return toEdge(bx, by, bz, cx - bx, cy - by, cz - bz, x, y, z, place);
    return toEdge(ax, ay, az, acx, acy, acz, x, y, z, place);
  }
  const d1 = abx * apx + aby * apy + abz * apz;
  const d2 = acx * apx + acy * apy + acz * apz;
  if (d1 <= 0 && d2 <= 0) return toPlace(ax, ay, az, x, y, z, place);
  const bpx = x - bx,
    bpy = y - by,
    bpz = z - bz;
  const d3 = abx * bpx + aby * bpy + abz * bpz;
  const d4 = acx * bpx + acy * bpy + acz * bpz;
  if (d3 >= 0 && d4 <= d3) return toPlace(bx, by, bz, x, y, z, place);
  const cpx = x - cx,
    cpy = y - cy,
    cpz = z - cz;
  const d5 = abx * cpx + aby * cpy + abz * cpz;
  const d6 = acx * cpx + acy * cpy + acz * cpz;
  if (d6 >= 0 && d5 <= d6) return toPlace(cx, cy, cz, x, y, z, place);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    const t = d1 / (d1 - d3);
    return toPlace(ax + t * abx, ay + t * aby, az + t * abz, x, y, z, place);
  }
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    const t = d2 / (d2 - d6);
    return toPlace(ax + t * acx, ay + t * acy, az + t * acz, x, y, z, place);
  }
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const t = (d4 - d3) / (d4 - d3 + d5 - d6);
    return toPlace(bx + t * (cx - bx), by + t * (cy - by), bz + t * (cz - bz), x, y, z, place);
  }
  const whole = va + vb + vc;
  const v = vb / whole;
  const w = vc / whole;
  return toPlace(ax + v * abx + w * acx, ay + v * aby + w * acy, az + v * abz + w * acz, x, y, z, place);
}

function toPlace(qx: number, qy: number, qz: number, x: number, y: number, z: number, place: Float64Array): number {
  place[0] = qx;
  place[1] = qy;
  place[2] = qz;
  return (x - qx) * (x - qx) + (y - qy) * (y - qy) + (z - qz) * (z - qz);
}

function toEdge(
  fx: number,
  fy: number,
  fz: number,
  ex: number,
  ey: number,
  ez: number,
  x: number,
  y: number,
  z: number,
  place: Float64Array,
): number {
  const squared = ex * ex + ey * ey + ez * ez;
  const along = (x - fx) * ex + (y - fy) * ey + (z - fz) * ez;
  const t = squared > 0 ? Math.min(1, Math.max(0, along / squared)) : 0;
  return toPlace(fx + t * ex, fy + t * ey, fz + t * ez, x, y, z, place);
}

/** The field of one triangle that stands alone, to be kept. */
export function triangleField(a: Vec3, b: Vec3, c: Vec3): Field {
  // In single precision where that loses nothing: arrays of one kind only keep the arithmetic above compiled for it.
  const single = Float32Array.of(...a, ...b, ...c);
  const whole = Float64Array.of(...a, ...b, ...c);
  const corners = whole.every((x, i) => x === single[i]) ? single : whole;
  const kind = triangleKind(corners, 0);
  const place = new Float64Array(3);
  return (x, y, z) => Math.sqrt(squaredToTriangle(corners, 0, kind, x, y, z, place));
}
