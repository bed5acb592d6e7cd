/**
 * After a port or a collector changes, the runners' ends are fixed to it anew: start and end where they now belong, first
 * and last bends as far along the end lines as before, everything between where it was. mm.
 */
import type { Design, Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import { type ResolvedRunner, resolveHeader } from '../header/resolve';
import { addScaled, distance } from '../vector';
import { headerKept } from './kept';

/** @param before the design whose runners fit @param after the same runners, other ports or merges */
export function reseat(before: Design, after: Design): Design {
  const was = headerKept(before);
  const old = new Map(was.runners.map((r) => [r.runner.id, r]));
  let touched = false;
  const runners = resolveHeader(after, was).runners.map((now): Runner => {
    const sat = old.get(now.runner.id);
    const points = sat && pointsFor(sat, now);
    if (!points) return now.runner;
    touched = true;
    return { ...now.runner, points };
  });
  return touched ? { ...after, runners } : after;
}

/** Null where neither end moved, or there are no points to move. */
function pointsFor(was: ResolvedRunner, now: ResolvedRunner): Vec3[] | null {
  const { points } = now.runner;
  if (!points) return null;
  const movesStart = !samePose(was.start, now.start);
  const movesEnd = now.end !== null && (was.end === null || !samePose(was.end, now.end));
  if (!movesStart && !movesEnd) return null;
  const out = [...points];
  const last = out.length - 1;
  // A lone bend belongs to both lines; it follows the end that moved and the rules say where the other is off.
  if (movesStart) {
    if (last > 1) out[1] = addScaled(now.start.position, now.start.direction, distance(points[0]!, points[1]!));
    out[0] = now.start.position;
  }
  if (movesEnd) {
    const { position, direction } = now.end!;
    if (last > 1) out[last - 1] = addScaled(position, direction, -distance(points[last - 1]!, points[last]!));
    out[last] = position;
  }
  return out;
}

const samePose = (a: Pose, b: Pose) =>
  [0, 1, 2].every((i) => a.position[i] === b.position[i] && a.direction[i] === b.direction[i]);
