/**
 * The first and last interior points keep a runner's ends true: they lie on the line of the port (or outlet) and of the
 * inlet, and may only ride along it. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { addScaled, dot, sub } from '../vector';
import type { Path } from './path';

/** An interior point never comes nearer to its end than this, so that the end keeps its direction, mm. The rules ask for more. */
export const LEAST_LEG = 1;

/** How far the first bend may slide along the start direction for a wish, never past the start. */
export function rideFromStart(path: Path, point: Vec3, by: number): number {
  const reach = dot(sub(point, path.start.position), path.start.direction);
  return Math.max(by, Math.min(0, LEAST_LEG - reach));
}

/** How far the last bend may slide along the end direction (positive: toward the inlet), never past the inlet. */
export function rideToEnd(path: Path, point: Vec3, by: number): number {
  const reach = dot(sub(path.points.at(-1)!, point), path.endDirection);
  return Math.min(by, Math.max(0, reach - LEAST_LEG));
}

/** `point` moved by `by` as far as point `index` may: freely, or along its end line. Ends stay. */
export function carried(path: Path, index: number, by: Vec3): Vec3 {
  const last = path.points.length - 1;
  const point = path.points[index]!;
  if (index === 0 || index === last) return point;
  if (last === 2) return point;
  if (index === 1)
    return addScaled(point, path.start.direction, rideFromStart(path, point, dot(by, path.start.direction)));
  if (index === last - 1)
    return addScaled(point, path.endDirection, rideToEnd(path, point, dot(by, path.endDirection)));
  return [point[0] + by[0], point[1] + by[1], point[2] + by[2]];
}
