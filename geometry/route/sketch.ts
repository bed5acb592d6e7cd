/** One shape that a runner could have: its points and radii, what it costs by itself, and places along it for rough measuring. */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { type BendPath, bendPath, measurePath } from '../layout/bendPath';
import { RADIANS } from '../tolerance';
import { addScaled, dot, sub } from '../vector';
import { type Barrier, obstruction, selfCrowding } from './crowd';
import { type Line, lineOf } from './line';
import type { RunnerTask } from './task';

export type Sketch = {
  /** From 1. */
  readonly inlet: number;
  readonly points: readonly Vec3[];
  readonly radii: readonly number[];
  /** Bends as the bender counts them: parts of one continuous bend are one. */
  readonly bends: number;
  /** All bend angles together, radians. */
  readonly turned: number;
  /** Centerline, mm. */
  readonly length: number;
  readonly line: Line;
  /** What its own rules and surroundings are missed by, mm². */
  readonly blocked: number;
};

/** The path of points between two ends; the first and the last point but one lie on the ends' rays. */
export function pathOf(start: Pose, end: Pose, points: readonly Vec3[], radii: readonly number[]): BendPath {
  const path = bendPath(radii);
  for (const [i, p] of points.entries()) path.points.set(p, 3 * i);
  path.directions.set(start.direction, 0);
  path.directions.set(end.direction, 3 * radii.length);
  measurePath(path);
  return path;
}

/** Points of a runner with those next to its ends set on the ends' rays, nearest to where they were. */
export function onRays(points: readonly Vec3[], start: Pose, end: Pose): Vec3[] {
  const onRay = (p: Vec3, { position, direction }: Pose): Vec3 =>
    addScaled(position, direction, dot(sub(p, position), direction));
  const last = points.length - 2;
  return points.map((p, k) => (k === 1 ? onRay(p, start) : k === last ? onRay(p, end) : p));
}

/** How much straights are too short by and bends too sharp, mm². */
export function misshapen(path: BendPath, { resolved: { tooling } }: RunnerTask, joined: readonly boolean[]): number {
  const { bends: n, straights, turns, radii } = path;
  let sum = 0;
  for (let k = 0; k <= n; k++) {
    const least = k === 0 ? tooling.firstStraight : k === n ? tooling.lastStraight : tooling.betweenStraight;
    const wanted = k > 0 && joined[k - 1] ? 0 : least;
    const short = wanted - straights[k]!;
    if (short > 0) sum += short * short;
  }
  for (let k = 0; k < n; k++) {
    if (joined[k] || joined[k - 1]) continue;
    const over = radii[k]! * (turns[k]! - Math.min(tooling.maxBendAngle, 172) * RADIANS);
    if (over > 0) sum += over * over;
  }
  return sum;
}

/** Weighs what is misshapen beside what is in the way: the solver mends straights more easily than it goes round things. */
const MISSHAPEN = 0.3;

export function sketched(
  task: RunnerTask,
  inlet: number,
  path: BendPath,
  points: readonly Vec3[],
  joined: readonly boolean[],
  bundles: readonly [number, number],
  barriers: readonly Barrier[],
): Sketch {
  const line = lineOf(path, task, bundles);
  let turned = 0;
  for (const turn of path.turns) turned += turn;
  return {
    inlet,
    points,
    radii: [...path.radii],
    bends: path.bends - joined.filter(Boolean).length,
    turned,
    length: path.length,
    line,
    blocked: MISSHAPEN * misshapen(path, task, joined) + obstruction(line, barriers) + selfCrowding(line),
  };
}
