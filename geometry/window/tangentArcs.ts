/**
 * The tightest lines between two ends: an arc straight after the least straight, a straight tangent to both, an arc before the
 * last one; or three arcs in a row. Arcs may go the long way round, past half a turn, and are then drawn as several points,
 * one continuous bend. In one plane these are the shortest there are (Dubins 1957); out of it they are good starts. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { setback } from '../curve/centerline';
import { LEAST_TURN_DEG, RADIANS } from '../tolerance';
import {
  add,
  addScaled,
  angleBetween,
  anySquareTo,
  cross,
  distance,
  dot,
  norm,
  reject,
  rotate,
  scale,
  sub,
  unit,
} from '../vector';
import type { Line } from './sampled';

/** A ray and the radius to turn with. */
type Corner = { readonly position: Vec3; readonly direction: Vec3 };

/** No single point turns further than this, so that its tangents meet nearby; wider arcs are shared between points. */
const WIDEST_POINT = 150 * RADIANS;
const SHARED = 115 * RADIANS;
const SWEEPS = 60;
const AGREES = 1e-3;

/** Arc, tangent straight, arc. @param long whether the first and the last arc go the long way round */
export function arcStraightArc(
  from: Corner,
  to: Corner,
  first: number,
  last: number,
  radius: number,
  long: readonly [boolean, boolean],
  guess: Vec3,
): Line | null {
  const P = addScaled(from.position, from.direction, first);
  const Q = addScaled(to.position, to.direction, -last);
  const back = scale(to.direction, -1);
  let w = guess;
  let off = Number.POSITIVE_INFINITY;
  for (let k = 0; k < SWEEPS && off > 1e-12; k++) {
    const p = arcEnd(P, from.direction, w, radius, long[0]);
    const q = arcEnd(Q, back, scale(w, -1), radius, long[1]);
    const wanted = unit(sub(q, p));
    off = distance(w, wanted);
    w = unit(addScaled(w, wanted, k < SWEEPS / 3 ? 1 : 0.5));
    if (norm(w) === 0) return null;
  }
  if (!(off < AGREES)) return null;
  const out = arcPoints(P, from.direction, w, radius, long[0]);
  const home = arcPoints(Q, back, scale(w, -1), radius, long[1]).reverse();
  return through(from, [...out, ...home], to, radius);
}

/** Three arcs in the plane of both ends' rays, the middle one the long way round; none where they lie too far apart. */
export function threeArcs(from: Corner, to: Corner, first: number, last: number, radius: number): Line[] {
  const P = addScaled(from.position, from.direction, first);
  const Q = addScaled(to.position, to.direction, -last);
  const normal = normalOf(P, from.direction, Q, to.direction);
  return [1, -1].flatMap((side) =>
    [1, -1].flatMap((bulge): Line[] => {
      const c1 = addScaled(P, cross(normal, from.direction), side * radius);
      const c2 = addScaled(Q, cross(normal, to.direction), side * radius);
      const apart = distance(c1, c2);
      if (apart >= 4 * radius || apart < 1e-6) return [];
      const half = scale(sub(c2, c1), 0.5);
      const off = scale(cross(normal, unit(half)), bulge * Math.sqrt(4 * radius * radius - (apart * apart) / 4));
      const middle = add(add(c1, half), off);
      const p = addScaled(c1, sub(middle, c1), 0.5);
      const q = addScaled(c2, sub(middle, c2), 0.5);
      const turn = (c: Vec3, a: Vec3, b: Vec3, way: number): number => {
        const angle = Math.atan2(way * dot(cross(sub(a, c), sub(b, c)), normal), dot(sub(a, c), sub(b, c)));
        return angle < 0 ? angle + 2 * Math.PI : angle;
      };
      const arcs = [
        { at: P, direction: from.direction, angle: turn(c1, P, p, side), way: side },
        {
          at: p,
          direction: scale(cross(normal, unit(sub(p, c1))), side),
          angle: turn(middle, p, q, -side),
          way: -side,
        },
        { at: q, direction: scale(cross(normal, unit(sub(q, c2))), side), angle: turn(c2, q, Q, side), way: side },
      ];
      const points = arcs.flatMap(({ at, direction, angle, way }) =>
        pointsAlong(at, direction, scale(cross(normal, direction), way), radius, angle),
      );
      return [through(from, points, to, radius)];
    }),
  );
}

const through = (from: Corner, points: readonly Vec3[], to: Corner, radius: number): Line => ({
  points: [from.position, ...points, to.position],
  radii: points.map(() => radius),
});

/** Square to the plane that both rays and the way between them lie in, as nearly as there is one. */
function normalOf(P: Vec3, u: Vec3, Q: Vec3, v: Vec3): Vec3 {
  const across = sub(Q, P);
  const candidates = [cross(u, v), scale(cross(u, across), 1 / Math.max(1, norm(across)))];
  const best = candidates.sort((a, b) => norm(b) - norm(a))[0]!;
  return norm(best) > 1e-6 ? unit(reject(unit(best), u)) : anySquareTo(u);
}

function turnOf(direction: Vec3, w: Vec3, long: boolean): { angle: number; inward: Vec3 } {
  const angle = angleBetween(direction, w);
  const side = reject(w, direction);
  const inward = norm(side) > 1e-12 ? unit(side) : anySquareTo(direction);
  return long ? { angle: 2 * Math.PI - angle, inward: scale(inward, -1) } : { angle, inward };
}

function arcEnd(at: Vec3, direction: Vec3, w: Vec3, radius: number, long: boolean): Vec3 {
  const { angle, inward } = turnOf(direction, w, long);
  return addScaled(addScaled(at, inward, radius * (1 - Math.cos(angle))), direction, radius * Math.sin(angle));
}

function arcPoints(at: Vec3, direction: Vec3, w: Vec3, radius: number, long: boolean): Vec3[] {
  const { angle, inward } = turnOf(direction, w, long);
  return pointsAlong(at, direction, inward, radius, angle);
}

/** Tangent intersections of an arc: one, or several equal parts where it is wide. */
function pointsAlong(at: Vec3, direction: Vec3, inward: Vec3, radius: number, angle: number): Vec3[] {
  if (angle < LEAST_TURN_DEG * RADIANS) return [];
  const parts = angle <= WIDEST_POINT ? 1 : Math.ceil(angle / SHARED);
  const share = angle / parts;
  const axis = cross(direction, inward);
  const centre = addScaled(at, inward, radius);
  const leg = setback(radius, share);
  return Array.from({ length: parts }, (_, k) => {
    const turned = k * share;
    const p = add(centre, rotate(sub(at, centre), axis, turned));
    return addScaled(p, rotate(direction, axis, turned), leg);
  });
}
