/**
 * Shapes that one runner could have between two given ends, of a given length: out of the port, across, into the inlet
 * with two bends, or with a third one on the way that takes up the length. mm, radians.
 */
import type { Tooling } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { setback } from '../curve/centerline';
import type { Pose } from '../header/merge';
import { RADIANS } from '../tolerance';
import { addScaled, angleBetween, anySquareTo, cross, distance, lerp, reject, sub, unit } from '../vector';

export type Shape = {
  readonly points: readonly Vec3[];
  /** Centerline length. */
  readonly length: number;
  /** All bend angles together. */
  readonly turned: number;
};

/** A sensible end leg is a straight and a bend's tangent; these are multiples of the bend radius added to the straight. */
const LEGS = [0.35, 0.7, 1, 1.4, 1.9, 2.5, 3.3, 4.3, 5.5, 7];
const SHORT_LEGS = [0.5, 1, 1.8];
/** How far the middle of a third bend stands off the line between the outer two, likewise. */
const BULGES = [0.1, 0.5, 1, 1.6, 2.4, 3.4, 4.6, 6];
const AROUND = 8;
const HALVINGS = 24;
/** Shapes within this of the length asked are as long: balance takes the rest. */
const NEAR_LENGTH = 0.5;

/** The shortest two-bend shape among the sampled; null where none can be made. */
export function shortest(start: Pose, end: Pose, tooling: Tooling): Shape | null {
  let best: Shape | null = null;
  for (const a of LEGS)
    for (const b of LEGS) {
      const shape = made(twoBends(start, end, leg(tooling, 'first', a), leg(tooling, 'last', b)), tooling);
      if (shape && (!best || shape.length < best.length)) best = shape;
    }
  return best;
}

/**
 * Two-bend shapes of about a length: for runners whose merge may still move, and so change what they come to.
 * @param within part of the length that they may be off
 */
export function nearShapes(start: Pose, end: Pose, tooling: Tooling, length: number, within: number): Shape[] {
  return LEGS.flatMap((a) =>
    LEGS.flatMap((b) => {
      const shape = made(twoBends(start, end, leg(tooling, 'first', a), leg(tooling, 'last', b)), tooling);
      return shape && Math.abs(shape.length - length) < within * length ? [shape] : [];
    }),
  );
}

/** @param length centerline length asked */
export function shapesOf(start: Pose, end: Pose, tooling: Tooling, length: number): Shape[] {
  const found: Shape[] = [];
  const keep = (family: (t: number) => readonly Vec3[], steps: readonly number[]): void => {
    found.push(...ofLength(family, steps, tooling, length));
  };
  const lastLegs = LEGS.map((k) => leg(tooling, 'last', k));
  for (const k of LEGS) {
    const a = leg(tooling, 'first', k);
    keep((b) => twoBends(start, end, a, b), lastLegs);
  }
  if (tooling.maxBends < 3) return found;
  for (const ka of SHORT_LEGS)
    for (const kb of SHORT_LEGS) {
      const [, A, B] = twoBends(start, end, leg(tooling, 'first', ka), leg(tooling, 'last', kb)) as [Vec3, Vec3, Vec3];
      const across = unit(sub(B, A));
      const u = unit(reject(start.direction, across));
      const side = u.every((x) => x === 0) ? anySquareTo(across) : u;
      const other = cross(across, side);
      for (let k = 0; k < AROUND; k++) {
        const phi = (2 * Math.PI * k) / AROUND;
        const off = addScaled(addScaled([0, 0, 0], side, Math.cos(phi)), other, Math.sin(phi));
        const middle = lerp(A, B, 0.5);
        keep(
          (bulge) => [start.position, A, addScaled(middle, off, bulge), B, end.position],
          BULGES.map((f) => f * tooling.centerlineRadius),
        );
      }
    }
  return found;
}

const leg = (tooling: Tooling, end: 'first' | 'last', radii: number): number =>
  (end === 'first' ? tooling.firstStraight : tooling.lastStraight) + radii * tooling.centerlineRadius;

const twoBends = (start: Pose, end: Pose, a: number, b: number): readonly Vec3[] => [
  start.position,
  addScaled(start.position, start.direction, a),
  addScaled(end.position, end.direction, -b),
  end.position,
];

/** Members of a one-parameter family that have the length asked and can be made, found between neighbouring steps. */
function ofLength(
  family: (t: number) => readonly Vec3[],
  steps: readonly number[],
  tooling: Tooling,
  length: number,
): Shape[] {
  const found: Shape[] = [];
  const over = (t: number): number => lengthOf(family(t), tooling.centerlineRadius) - length;
  let low = steps[0]!;
  let atLow = over(low);
  for (const step of steps.slice(1)) {
    const at = over(step);
    if (atLow <= 0 !== at <= 0) {
      let [a, b] = [low, step];
      for (let k = 0; k < HALVINGS; k++) {
        const mid = (a + b) / 2;
        if (over(mid) <= 0 === atLow <= 0) a = mid;
        else b = mid;
      }
      const shape = made(family((a + b) / 2), tooling);
      // Where a bend turns back on itself the length jumps, and no member has the one asked.
      if (shape && Math.abs(shape.length - length) < NEAR_LENGTH) found.push(shape);
    }
    [low, atLow] = [step, at];
  }
  return found;
}

function lengthOf(points: readonly Vec3[], radius: number): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distance(points[i - 1]!, points[i]!);
  for (let i = 1; i < points.length - 1; i++) {
    const turn = angleBetween(sub(points[i]!, points[i - 1]!), sub(points[i + 1]!, points[i]!));
    length += radius * turn - 2 * setback(radius, turn);
  }
  return length;
}

/** Null where straights are too short or bends too sharp for the tooling. */
function made(points: readonly Vec3[], tooling: Tooling): Shape | null {
  const { centerlineRadius: radius, firstStraight, betweenStraight, lastStraight, maxBendAngle } = tooling;
  const n = points.length - 2;
  const turns = Array.from({ length: n }, (_, i) =>
    angleBetween(sub(points[i + 1]!, points[i]!), sub(points[i + 2]!, points[i + 1]!)),
  );
  // Held back a little, so that balance has somewhere to go.
  if (turns.some((t) => t > Math.min(maxBendAngle - 5, 165) * RADIANS)) return null;
  const setbacks = turns.map((t) => setback(radius, t));
  for (let i = 0; i <= n; i++) {
    const least = i === 0 ? firstStraight : i === n ? lastStraight : betweenStraight;
    const straight = distance(points[i]!, points[i + 1]!) - (setbacks[i - 1] ?? 0) - (setbacks[i] ?? 0);
    if (straight < least) return null;
  }
  return { points, length: lengthOf(points, radius), turned: turns.reduce((sum, t) => sum + t, 0) };
}
