/**
 * Bend rows (length, rotation, angle: "LRA") from a centerline and back. Lengths mm; angles in degrees, because these
 * rows are what the bender reads. Rotation is right-handed about the direction of travel, in (−180, 180]; nominal
 * geometry, before springback.
 */
import type { Vec3 } from '../../shared/vec3';
import { ANGLE_TOLERANCE, DEGREES, RADIANS } from '../tolerance';
import { add, addScaled, anySquareTo, cross, norm, reject, rotate, scale, signedAngle, unit } from '../vector';
import { bends } from './bends';
import { type Centerline, setback } from './centerline';

export type BendRow = {
  /** Straight from the last tangent point (or the start) to this bend's; in the last row, the straight that remains. */
  readonly length: number;
  readonly rotation: number;
  readonly angle: number;
  readonly radius: number;
};

export type BendTable = {
  /** The first bend's direction (toward its centre) from `up`, right-handed about the start direction, (−180, 180]. */
  readonly clocking: number;
  /** One row a bend, then the remaining straight with rotation, angle and radius 0. */
  readonly rows: readonly BendRow[];
};

/** A bend past this is rebuilt as equal arcs that are not, so that their tangents meet at a reasonable point. */
const WIDEST_SINGLE_POINT = 170;

/**
 * @param up any vector not along the start direction; clocking is measured from its part square to it
 */
export function bendTable(line: Centerline, up: Vec3): BendTable {
  const list = bends(line);
  const rows: BendRow[] = [];
  let before: Vec3 | null = null;
  for (const { first, last, angle, radius } of list) {
    const travel = line.directions[first]!;
    const normal = unit(cross(travel, line.directions[first + 1]!));
    rows.push({
      length: line.straights[first]!,
      rotation: before ? halfOpen(signedAngle(before, normal, travel) * DEGREES) : 0,
      angle: angle * DEGREES,
      radius,
    });
    before = unit(cross(line.directions[last]!, line.directions[last + 1]!));
  }
  rows.push({ length: line.straights.at(-1)!, rotation: 0, angle: 0, radius: 0 });
  return { clocking: list.length > 0 ? clocking(line, up) : 0, rows };
}

function clocking(line: Centerline, up: Vec3): number {
  const travel = line.directions[0]!;
  const inward = reject(line.directions[1]!, travel);
  return halfOpen(signedAngle(squareTo(up, travel), inward, travel) * DEGREES);
}

/**
 * Rebuilds points and radii by marching a frame along the rows: the bender's own way round, used to prove the table.
 * @param start position, direction and up as the clocking was measured from
 */
export function fromBendTable(
  start: { readonly position: Vec3; readonly direction: Vec3; readonly up: Vec3 },
  table: BendTable,
): { points: Vec3[]; radii: number[] } {
  let travel = unit(start.direction);
  let inward = rotate(unit(squareTo(start.up, travel)), travel, table.clocking * RADIANS);
  let tangent = start.position;
  const points: Vec3[] = [start.position];
  const radii: number[] = [];
  for (const { length, rotation, angle, radius } of table.rows) {
    tangent = addScaled(tangent, travel, length);
    if (angle === 0) continue;
    inward = rotate(inward, travel, rotation * RADIANS);
    const parts = Math.ceil(angle / WIDEST_SINGLE_POINT);
    const turn = (angle * RADIANS) / parts;
    for (let k = 0; k < parts; k++) {
      const reach = setback(radius, turn);
      points.push(addScaled(tangent, travel, reach));
      radii.push(radius);
      const [t, n] = [travel, inward];
      travel = unit(add(scale(t, Math.cos(turn)), scale(n, Math.sin(turn))));
      inward = unit(add(scale(t, -Math.sin(turn)), scale(n, Math.cos(turn))));
      tangent = addScaled(points.at(-1)!, travel, reach);
    }
  }
  points.push(tangent);
  return { points, radii };
}

/** `up` made square to the direction of travel; where it lies along it, any square direction, so that a table always exists. */
function squareTo(up: Vec3, travel: Vec3): Vec3 {
  const square = reject(unit(up), travel);
  return norm(square) > ANGLE_TOLERANCE ? square : anySquareTo(travel);
}

/** (−180, 180]: −180 and what rounds to it become 180, so that one bend plane has one name. */
function halfOpen(degrees: number): number {
  return degrees <= -180 + ANGLE_TOLERANCE * DEGREES ? 180 : degrees;
}
