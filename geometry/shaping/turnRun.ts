/**
 * Turning about a straight: the bends beyond it swing round its line as a tube swings in the bender's chuck, which changes
 * the rotation at that straight and no angle but where the far end is closed. The last (or first) bend stays on its end
 * line, so the last leg takes up what is left. Radians.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { add, rotate, sub } from '../vector';
import { type Path, pathOf, type Range, rangeAt, withPoints } from './path';
import { refit } from './refit';

export type Side = 'before' | 'after';

/** The points that turning about a straight swings; empty where that side has none that is free. */
export function swung(path: Path, run: Range, side: Side): number[] {
  const [from, to] =
    side === 'after'
      ? [rangeAt(path, run.last).last + 1, path.points.length - 3]
      : [2, rangeAt(path, run.first).first - 1];
  const out: number[] = [];
  for (let i = Math.max(2, from); i <= Math.min(to, path.points.length - 3); i++) out.push(i);
  return out;
}

/** The side of a straight whose bends can be turned about it: that with fewer to move; null where neither is free. */
export function turningSide(path: Path, straight: number): Side | null {
  const run = path.straights[straight];
  if (!run) return null;
  const after = run.last === path.points.length - 1 ? [] : swung(path, run, 'after');
  const before = run.first === 0 ? [] : swung(path, run, 'before');
  if (after.length === 0 && before.length === 0) return null;
  if (after.length === 0) return 'before';
  return before.length > 0 && before.length < after.length ? 'before' : 'after';
}

/** @param angle right-handed about the direction of travel @param side default: the one with fewer bends to move */
export function turnRun(
  design: Design,
  runner: string,
  straight: number,
  angle: number,
  side: Side | null = turningSide(pathOf(design, runner), straight),
): Design {
  const path = pathOf(design, runner);
  const run = path.straights[straight];
  if (!run || side === null || angle === 0) return design;
  const axis = path.line.directions[path.line.source.indexOf(run.first)]!;
  const centre = path.points[run.first]!;
  const points: Vec3[] = [...path.points];
  for (const i of swung(path, run, side)) points[i] = add(centre, rotate(sub(points[i]!, centre), axis, angle));
  return withPoints(design, runner, refit(path, points));
}
