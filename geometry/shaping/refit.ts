/**
 * A bend past 170° is stored as two points. After an edit its legs come from other directions, so both points are laid anew
 * for it to stay one continuous bend: equal turns in one plane, no straight between. It keeps its middle, or where it rides
 * on an end line the point that rides. Solved by repeated substitution in the bend's plane, which settles fast because the
 * turns hardly depend on the bend's own size. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { setback } from '../curve/centerline';
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance';
import { addScaled, cross, distance, dot, lerp, norm, scale, sub, unit } from '../vector';
import { type Path, ridesEnd, ridesStart } from './path';

const MOST_ROUNDS = 200;
/** Below rounding of the points themselves: the answer must not depend on where the search started. */
const SETTLED = ANGLE_TOLERANCE * LENGTH_TOLERANCE;

/** `points` with every bend of `path` that is stored as two points continuous again; where that cannot be, as they came. */
export function refit(path: Path, points: readonly Vec3[]): Vec3[] {
  const out = [...points];
  for (const range of path.bends) {
    if (range.last !== range.first + 1) continue;
    if (isUntouched(path, out, range.first)) continue;
    const pair = layPair(path, out, range.first, ridesStart(range), ridesEnd(path, range));
    if (pair) out.splice(range.first, 2, ...pair);
  }
  return out;
}

const isUntouched = (path: Path, points: readonly Vec3[], first: number) =>
  [first - 1, first, first + 1, first + 2].every((i) => points[i] === path.points[i]);

function layPair(
  path: Path,
  points: readonly Vec3[],
  first: number,
  fixesFirst: boolean,
  fixesLast: boolean,
): [Vec3, Vec3] | null {
  if (fixesFirst && fixesLast) return null;
  const [a, p, q, b] = points.slice(first - 1, first + 3) as [Vec3, Vec3, Vec3, Vec3];
  const middle = lerp(p, q, 0.5);
  const through = fixesFirst ? p : fixesLast ? q : middle;
  const normal = planeOf(path, first, sub(through, a), sub(b, through));
  if (!normal) return null;
  const x = unit(sub(through, a));
  const y = cross(normal, x);
  const heading = (v: Vec3) => Math.atan2(dot(v, y), dot(v, x));
  const along = (angle: number): Vec3 => addScaled(scale(x, Math.cos(angle)), y, Math.sin(angle));
  const radius = path.line.radii[path.line.source.indexOf(first) - 1]!;

  let [from, to] = [p, q];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const into = heading(sub(from, a));
    const out = heading(sub(b, to));
    const whole = (out - into + 2 * Math.PI) % (2 * Math.PI);
    const way = along(into + whole / 2);
    const leg = 2 * setback(radius, whole / 2);
    const next: [Vec3, Vec3] = fixesFirst
      ? [p, addScaled(p, way, leg)]
      : fixesLast
        ? [addScaled(q, way, -leg), q]
        : [addScaled(middle, way, -leg / 2), addScaled(middle, way, leg / 2)];
    const moved = distance(next[0], from) + distance(next[1], to);
    [from, to] = next;
    if (moved <= SETTLED * leg) return [from, to];
  }
  return distance(from, to) < Number.POSITIVE_INFINITY && norm(sub(to, from)) > 0 ? [from, to] : null;
}

/** Normal of the plane through both legs, on the side to which the bend turned before. */
function planeOf(path: Path, first: number, into: Vec3, out: Vec3): Vec3 | null {
  const [o, p, q] = path.points.slice(first - 1, first + 2) as [Vec3, Vec3, Vec3];
  const before = cross(sub(p, o), sub(q, p));
  const normal = cross(into, out);
  if (norm(normal) <= ANGLE_TOLERANCE * norm(into) * norm(out)) return null;
  return dot(normal, before) < 0 ? scale(unit(normal), -1) : unit(normal);
}
