/**
 * Out of the bay, once a piece is off its studs: first straight every way, then down with small turns as most headers go, then
 * over a lattice of places and turns to whichever side, then by chance.
 * Chance is seeded and the work is counted in measured places, so the same asks get the same answer. A way found is checked as
 * a motion; where none is found that proves nothing. mm, radians.
 */
import type { Vec3 } from '../../shared/vec3';
import { randomNumbers } from '../layout/random';
import { unit } from '../vector';
import { type Body, extent } from './body';
import { ANYWHERE, DOWN, farOut, isClear, type Lattice, latticeWay } from './lattice';
import { type Asked, type Counter, type Moved, moved } from './motion';
import { matrixOf, movedBy } from './pose';
import type { RemovalPose } from './report';
import { shortened } from './shorten';
import { commonBox } from './space';
import { grownWay } from './trees';

export type Left =
  | { readonly ok: true; readonly path: readonly RemovalPose[] }
  /** The straight way that led farthest, what ended it and where. */
  | { readonly ok: false; readonly way: Vec3; readonly after: number; readonly stop: Moved };

/** Of the work, for the likely ways and for the lattice of all; the rest is for chance. */
const LIKELY = 0.3;
const ORDERLY = 0.4;

/** @param first ways worth trying before others */
export function leaveBay(
  body: Body,
  start: RemovalPose,
  all: readonly Asked[],
  first: readonly Vec3[],
  counter: Counter,
  seed: number,
): Left {
  const box = commonBox(all);
  const own = extent(body, matrixOf(start));
  if (!box || isClear(own, box)) return { ok: true, path: [start] };
  const ways = [...first, ...everyWay()]
    .map((way) => ({ way, far: farOut(own, box, way) }))
    .filter(({ far }) => Number.isFinite(far))
    .sort((a, b) => a.far - b.far);
  let best: Extract<Left, { ok: false }> | null = null;
  for (const { way, far } of ways) {
    const stop = moved(body, start, movedBy(start, way, far), all, counter);
    if (stop.share >= 1) return { ok: true, path: [start, movedBy(start, way, far)] };
    const after = stop.share * far;
    if (!best || after > best.after) best = { ok: false, way, after, stop };
  }
  const goals = ways.map(({ way, far }) => movedBy(start, way, far)).filter((goal) => isFree(body, goal, all, counter));
  const budget = counter.left;
  const over = (lattice: Lattice, share: number): RemovalPose[] | null => {
    const own: Counter = { left: Math.min(counter.left, Math.floor(share * budget)) };
    counter.left -= own.left;
    const found = latticeWay(body, start, all, box, own, lattice);
    // What was not used is left for the next.
    counter.left += Math.max(0, own.left);
    return found;
  };
  const path =
    over(DOWN, LIKELY) ??
    over(ANYWHERE, ORDERLY) ??
    (goals.length > 0 ? grownWay(body, start, goals, all, box, counter, seed) : null);
  return path ? { ok: true, path: shortened(path, body, all, randomNumbers(seed)) } : best!;
}

/** Along the axes, and between two or three of them. */
function everyWay(): Vec3[] {
  const steps = [-1, 0, 1];
  return steps.flatMap((x) =>
    steps.flatMap((y) => steps.flatMap((z): Vec3[] => (x === 0 && y === 0 && z === 0 ? [] : [unit([x, y, z])]))),
  );
}

const isFree = (body: Body, pose: RemovalPose, all: readonly Asked[], counter: Counter): boolean =>
  moved(body, pose, pose, all, counter).share >= 1;
