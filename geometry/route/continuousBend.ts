/**
 * Bends too wide for one point, as two or three points of one arc: a circle that a ray runs into, left on the tangent that
 * leads to a given place. Exact, so that it is known again as one bend. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { addScaled, dot, norm, reject, scale, sub, unit } from '../vector';

/** Three points where the tangents of two would run far. */
const TWO_PARTS = (300 * Math.PI) / 180;
/** Nearer than this to the ray there is no plane to turn in, mm. */
const NO_PLANE = 1e-6;

/**
 * @param from where the arc begins, along `direction`
 * @param to where the tangent that it leaves on leads
 * @param away whether it turns away from there, and so all the way round
 * @returns the angle, and the side it turns to; null where no such tangent is
 */
export function turnToward(
  from: Vec3,
  direction: Vec3,
  to: Vec3,
  radius: number,
  away: boolean,
): { readonly angle: number; readonly side: Vec3 } | null {
  const there = sub(to, from);
  const aside = reject(there, direction);
  if (norm(aside) < NO_PLANE) return null;
  const side = scale(unit(aside), away ? -1 : 1);
  const x = dot(there, direction);
  const y = dot(there, side) - radius;
  const far = Math.hypot(x, y);
  if (far <= radius) return null;
  const angle = Math.atan2(y, x) - Math.acos(radius / far) + Math.PI / 2;
  return { angle: ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI), side };
}

export const partsOf = (angle: number): number => (angle > TWO_PARTS ? 3 : 2);

/** Points of an arc that begins at `from`: equal parts, so that each is tangent to the next at its middle. */
export function arcPoints(
  from: Vec3,
  direction: Vec3,
  side: Vec3,
  radius: number,
  angle: number,
  parts: number,
): Vec3[] {
  const each = angle / parts;
  const tangent = radius * Math.tan(each / 2);
  const points: Vec3[] = [addScaled(from, direction, tangent)];
  for (let k = 1; k < parts; k++) {
    const onward = addScaled(scale(direction, Math.cos(k * each)), side, Math.sin(k * each));
    points.push(addScaled(points.at(-1)!, onward, 2 * tangent));
  }
  return points;
}

/**
 * Points of a runner with those of its continuous bends set exactly again, where a step has put them a little beside. The
 * legs before and after stay; parts come out equal. Where that cannot be, they stay as they are.
 */
export function rejoined(
  points: readonly Vec3[],
  radii: readonly number[],
  joined: readonly boolean[],
  start: Pose,
  end: Pose,
): Vec3[] {
  const exact = [...points];
  const n = radii.length;
  for (let first = 0; first < n; first++) {
    if (!joined[first]) continue;
    let last = first;
    while (joined[last]) last++;
    // The bend's own points are first + 1 … last + 1. From the start if something follows that it can lead to, else from the end.
    if (last + 1 < n) {
      const d = first === 0 ? start.direction : unit(sub(exact[first + 1]!, exact[first]!));
      const again = resetArc(exact.slice(first + 1, last + 3), d, radii[first]!);
      if (again) exact.splice(first + 1, again.length, ...again);
    } else if (first > 0) {
      const again = resetArc(exact.slice(first, last + 2).reverse(), scale(end.direction, -1), radii[first]!);
      if (again) exact.splice(first + 1, again.length, ...again.reverse());
    }
    first = last;
  }
  return exact;
}

/** @param around the bend's points and the one that it leads to */
function resetArc(around: readonly Vec3[], direction: Vec3, radius: number): Vec3[] | null {
  const to = around.at(-1)!;
  const parts = around.length - 1;
  const legs = around.slice(1).map((p, i) => sub(p, around[i]!));
  let angle = 0;
  let before = direction;
  let firstTurn = 0;
  for (const [k, leg] of legs.entries()) {
    const onward = unit(leg);
    const turn = Math.acos(Math.max(-1, Math.min(1, dot(before, onward))));
    if (k === 0) firstTurn = turn;
    angle += turn;
    before = onward;
  }
  const from = addScaled(around[0]!, direction, -radius * Math.tan(firstTurn / 2));
  const side = reject(legs[0]!, direction);
  const turn = turnToward(from, direction, to, radius, dot(side, sub(to, from)) < 0);
  // Something else than was drawn: a way round the other side, or almost no bend at all.
  if (!turn || Math.abs(turn.angle - angle) > Math.PI / 3) return null;
  return arcPoints(from, direction, turn.side, radius, turn.angle, parts);
}
