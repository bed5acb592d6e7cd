/** A triangle with so much all round it, such as what a bar covers that swings through a small angle. mm. */
import type { Vec3 } from '../../shared/vec3';
import { distance, lerp } from '../vector';
import type { ConvexShape } from './shapes';
import { squaredToTriangle, triangleKind } from './triangle';

export function paddedTriangle(a: Vec3, b: Vec3, c: Vec3, padding: number): ConvexShape {
  const soup = Float64Array.of(...a, ...b, ...c);
  const kind = triangleKind(soup, 0);
  const place = new Float64Array(3);
  const centre = lerp(a, lerp(b, c, 0.5), 2 / 3);
  return {
    centre,
    reach: Math.max(distance(centre, a), distance(centre, b), distance(centre, c)) + padding,
    signedDistance: (x, y, z) => Math.sqrt(squaredToTriangle(soup, 0, kind, x, y, z, place)) - padding,
  };
}
