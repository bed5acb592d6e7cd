/**
 * Shapes drawn at random between two ends, of a given length where one is asked: the raw material of the search. Not valid,
 * only near enough for the solver to make them so. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { setback } from '../curve/centerline';
import type { Pose } from '../header/merge';
import { addScaled, angleBetween, anySquareTo, cross, distance, lerp, reject, sub, unit } from '../vector';
import type { RunnerTask } from './task';

export type Proposal = {
  readonly points: readonly Vec3[];
  readonly radii: readonly number[];
  readonly joined: readonly boolean[];
};

/** End legs are the least straight and this many bend radii more, drawn evenly on a logarithmic scale. */
const SHORTEST_LEG = 0.15;
const LONGEST_LEG = 7;
/** Steps by which a family of shapes is walked to find those of the length asked. */
const WALK = 10;
const HALVINGS = 18;
/** Inner points lie off the line between the outer ones by up to this many bend radii. */
const WIDEST = 7;
/** Inner points lie along that line from this part of it (before its beginning) to as much beyond its end. */
const BEYOND = -0.1;

/**
 * @param bends points where it turns
 * @param length of the centerline, or null where any will do
 * @returns null where this draw leads to none of that length
 */
export function propose(
  task: RunnerTask,
  start: Pose,
  end: Pose,
  bends: number,
  length: number | null,
  random: () => number,
): Proposal | null {
  const { tooling } = task.resolved;
  const radii = Array.from({ length: bends }, () => task.dies[Math.floor(random() * task.dies.length)]!);
  const R = radii[0]!;
  const joined = radii.map(() => false);
  const leg = (least: number): number => least + R * SHORTEST_LEG * (LONGEST_LEG / SHORTEST_LEG) ** random();
  const a = leg(tooling.firstStraight);
  const A = addScaled(start.position, start.direction, a);
  if (bends === 2) {
    const family = (b: number): Vec3[] => [start.position, A, addScaled(end.position, end.direction, -b), end.position];
    const b =
      length === null
        ? leg(tooling.lastStraight)
        : ofLength(
            family,
            radii,
            length,
            tooling.lastStraight + 0.1 * R,
            tooling.lastStraight + (LONGEST_LEG + 1) * R,
            random,
          );
    return b === null ? null : { points: family(b), radii, joined };
  }
  const B = addScaled(end.position, end.direction, -leg(tooling.lastStraight));
  const across = unit(sub(B, A));
  const lean = unit(reject(start.direction, across));
  const side = lean.some((x) => x !== 0) ? lean : anySquareTo(across);
  const other = cross(across, side);
  let phi = 2 * Math.PI * random();
  const parts = Array.from({ length: bends - 2 }, () => BEYOND + (1 - 2 * BEYOND) * random()).sort((p, q) => p - q);
  const offs = parts.map((part) => {
    const off = addScaled(addScaled([0, 0, 0], side, Math.cos(phi)), other, Math.sin(phi));
    phi += (random() - 0.5) * Math.PI * (random() < 0.25 ? 2 : 0.8);
    return { off, part, much: 0.2 + 0.8 * random() };
  });
  const family = (wide: number): Vec3[] => [
    start.position,
    A,
    ...offs.map(({ off, part, much }) => addScaled(lerp(A, B, part), off, wide * much)),
    B,
    end.position,
  ];
  const wide = length === null ? R * WIDEST * random() ** 2 : ofLength(family, radii, length, 0, WIDEST * R, random);
  return wide === null ? null : { points: family(wide), radii, joined };
}

/** A member of a one-parameter family that has the length asked: one of those found, at random; null where none has. */
function ofLength(
  family: (t: number) => readonly Vec3[],
  radii: readonly number[],
  length: number,
  low: number,
  high: number,
  random: () => number,
): number | null {
  const over = (t: number): number => lengthOf(family(t), radii) - length;
  const roots: [number, number, boolean][] = [];
  let before = low;
  let isShort = over(low) <= 0;
  for (let k = 1; k <= WALK; k++) {
    const t = low + (high - low) * (k / WALK) ** 1.5;
    const short = over(t) <= 0;
    if (short !== isShort) roots.push([before, t, isShort]);
    before = t;
    isShort = short;
  }
  if (roots.length === 0) return null;
  let [a, b, short] = roots[Math.floor(random() * roots.length)]!;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (a + b) / 2;
    if (over(middle) <= 0 === short) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

function lengthOf(points: readonly Vec3[], radii: readonly number[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distance(points[i - 1]!, points[i]!);
  for (let i = 1; i < points.length - 1; i++) {
    const turn = angleBetween(sub(points[i]!, points[i - 1]!), sub(points[i + 1]!, points[i]!));
    length += radii[i - 1]! * turn - 2 * setback(radii[i - 1]!, turn);
  }
  return length;
}
