/**
 * A triangle against a tube's flat end. Where the two come nearest a side of the triangle meets the disc, or the disc's rim the
 * triangle: the sides by a search along each, of the rim only the places that can be nearest to the triangle's plane, or in it.
 * mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, cross, dot, norm, reject, scale, sub, unit } from '../vector';
import { type Disc, type Field, type Minimum, minimumOnInterval, minimumOnTriangle } from './convexMinimum';
import { behindDisc, pointToDisc, TOUCHING } from './discs';
import type { Rising } from './rising';

/**
 * Distance of a triangle to the disc; where it cuts the disc, minus the depth to which it reaches into the tube behind it.
 * @param rising from the disc, made once for many triangles
 * @param toTriangle its distance
 * @param below nothing from there on is of interest: then null
 */
export function discToTriangle(
  disc: Disc,
  rising: Rising,
  toTriangle: Field,
  a: Vec3,
  b: Vec3,
  c: Vec3,
  below: number,
): Minimum | null {
  const apart = apartFrom(disc, rising, toTriangle, a, b, c, Math.max(below, 2 * TOUCHING));
  if (!apart) return null;
  if (apart.value > TOUCHING) return apart.value < below ? apart : null;
  // What cuts the end reaches in no deeper than its lowest corner.
  if (Math.min(heightOver(disc, a), heightOver(disc, b), heightOver(disc, c)) >= below) return null;
  const value = Math.min(minimumOnTriangle(behindDisc(disc), a, b, c).value, 0);
  return value < below ? { value, at: apart.at } : null;
}

function apartFrom(
  disc: Disc,
  rising: Rising,
  toTriangle: Field,
  a: Vec3,
  b: Vec3,
  c: Vec3,
  below: number,
): Minimum | null {
  let best: Minimum | null = null;
  for (const at of rimBeside(disc, a, b, c)) {
    const value = toTriangle(...at);
    if (value < (best?.value ?? below)) best = { value, at };
  }
  for (const [p, q] of [
    [a, b],
    [b, c],
    [c, a],
  ] as const) {
    if (leastAlong(rising, p, q) >= (best?.value ?? below)) continue;
    const [dx, dy, dz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
    const along = (t: number): number => pointToDisc(disc, p[0] + t * dx, p[1] + t * dy, p[2] + t * dz);
    const { value, t } = minimumOnInterval(along, 0, 1);
    if (value < (best?.value ?? below))
      best = { value, at: placeOnDisc(disc, [p[0] + t * dx, p[1] + t * dy, p[2] + t * dz]) };
  }
  return best;
}

const way = new Float64Array(3);

/** No place between two has less: by the plane that touches the disc towards the middle. */
function leastAlong(rising: Rising, p: Vec3, q: Vec3): number {
  const value = rising((p[0] + q[0]) / 2, (p[1] + q[1]) / 2, (p[2] + q[2]) / 2, way);
  if (value === 0) return 0;
  return value - Math.abs((q[0] - p[0]) * way[0]! + (q[1] - p[1]) * way[1]! + (q[2] - p[2]) * way[2]!) / 2;
}

/** Where the rim comes nearest to the triangle's plane, or goes through it. */
function rimBeside({ centre, normal, radius }: Disc, a: Vec3, b: Vec3, c: Vec3): Vec3[] {
  const upright = cross(sub(b, a), sub(c, a));
  const size = norm(upright);
  if (size === 0) return [];
  const away = dot(upright, sub(centre, a)) / size;
  const slope = scale(reject(upright, normal), 1 / size);
  const steep = norm(slope);
  if (steep === 0) return [];
  const down = scale(slope, -Math.sign(away || 1) / steep);
  const level = unit(cross(normal, down));
  const off = Math.abs(away) / steep;
  if (off >= radius) return [addScaled(centre, down, radius)];
  const half = Math.sqrt(radius * radius - off * off);
  const foot = addScaled(centre, down, off);
  return [addScaled(foot, level, half), addScaled(foot, level, -half)];
}

function placeOnDisc({ centre, normal, radius }: Disc, p: Vec3): Vec3 {
  const inPlane = reject(sub(p, centre), normal);
  const across = norm(inPlane);
  return add(centre, across > radius ? scale(inPlane, radius / across) : inPlane);
}

const heightOver = ({ centre, normal }: Disc, p: Vec3): number =>
  (p[0] - centre[0]) * normal[0] + (p[1] - centre[1]) * normal[1] + (p[2] - centre[2]) * normal[2];
