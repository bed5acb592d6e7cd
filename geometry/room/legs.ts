/**
 * A path of a rigid piece as few straight legs, so that people can follow it: each a shift of the piece's middle and a turn about
 * it, both even along the leg. Turns are axis times angle, radians, right-handed. mm, design's frame.
 */
import type { Vec3 } from '../../shared/vec3';
import type { RemovalPose } from '../removal/report';
import { add, addScaled, cross, distance, dot, norm, rotate, scale, sub } from '../vector';

export type Leg = { readonly move: Vec3; readonly turn: Vec3 };

/** How far the piece's middle, and how far its turn, may be off a leg: less than hands can tell. */
const OFF = 4;
const OFF_TURN = 0.03;

/** @param middle of the piece where it stands fitted */
export function legsOf(path: readonly RemovalPose[], middle: Vec3): Leg[] {
  const legs: Leg[] = [];
  for (let from = 0; from < path.length - 1; ) {
    let to = from + 1;
    while (to + 1 < path.length && isEven(path, from, to + 1, middle)) to++;
    const leg = between(path[from]!, path[to]!, middle);
    if (norm(leg.move) > 0 || norm(leg.turn) > 0) legs.push(leg);
    from = to;
  }
  return legs;
}

/** Whether all between lie where an even motion from the one to the other would have them, at some time of it. */
function isEven(path: readonly RemovalPose[], from: number, to: number, middle: Vec3): boolean {
  const whole = between(path[from]!, path[to]!, middle);
  const [way, angle] = [norm(whole.move), norm(whole.turn)];
  for (let i = from + 1; i < to; i++) {
    const part = between(path[from]!, path[i]!, middle);
    const t =
      way > OFF
        ? dot(part.move, whole.move) / (way * way)
        : angle > 0
          ? dot(part.turn, whole.turn) / (angle * angle)
          : 0;
    if (t < 0 || t > 1) return false;
    if (distance(part.move, scale(whole.move, t)) > OFF) return false;
    if (distance(part.turn, scale(whole.turn, t)) > OFF_TURN) return false;
  }
  return true;
}

function between(a: RemovalPose, b: RemovalPose, middle: Vec3): Leg {
  const place = (p: RemovalPose): Vec3 => add(turned(middle, p.turn), p.move);
  return { move: sub(place(b), place(a)), turn: combined(b.turn, scale(a.turn, -1)) };
}

function turned(v: Vec3, turn: Vec3): Vec3 {
  const angle = norm(turn);
  return angle > 0 ? rotate(v, scale(turn, 1 / angle), angle) : v;
}

/** First `before`, then `then`: as unit quaternions multiplied. */
function combined(then: Vec3, before: Vec3): Vec3 {
  const [a, p] = quaternion(then);
  const [b, q] = quaternion(before);
  const w = a * b - dot(p, q);
  const v = add(addScaled(scale(q, a), p, b), cross(p, q));
  const sine = norm(v);
  // The shorter way round.
  const angle = 2 * Math.atan2(sine, Math.abs(w));
  return sine > 0 ? scale(v, ((w < 0 ? -1 : 1) * angle) / sine) : [0, 0, 0];
}

function quaternion(turn: Vec3): readonly [number, Vec3] {
  const angle = norm(turn);
  return [Math.cos(angle / 2), angle > 0 ? scale(turn, Math.sin(angle / 2) / angle) : [0, 0, 0]];
}
