/**
 * Moving a straight parallel to itself, with the bends at both its ends; the straights beyond swing. Where one of those
 * bends rides on an end line it can only follow along that line, and the straight goes as far as that carries it, still
 * parallel. The first and last straights lie on an end line and stay. mm.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { ANGLE_TOLERANCE } from '../tolerance';
import { add, dot, norm, reject, scale } from '../vector';
import { type Path, pathOf, type Range, rangeAt, ridesEnd, ridesStart, withPoints } from './path';
import { refit } from './refit';
import { rideFromStart, rideToEnd } from './ride';

/** @param straight counted from 0 as the saw sees them @param by only its part square to the straight counts */
export function moveRun(design: Design, runner: string, straight: number, by: Vec3): Design {
  const path = pathOf(design, runner);
  const run = path.straights[straight];
  if (!run || run.first === 0 || run.last === path.points.length - 1) return design;
  const along = path.line.directions[path.line.source.indexOf(run.first)]!;
  const wish = reject(by, along);
  const near = rangeAt(path, run.first);
  const far = rangeAt(path, run.last);

  let [nearBy, farBy] = [wish, wish];
  if (ridesStart(near)) nearBy = ridden(path, path.start.direction, along, wish, near);
  if (ridesEnd(path, far)) farBy = ridden(path, path.endDirection, along, wish, far);
  if (ridesStart(near) && !ridesEnd(path, far)) farBy = reject(nearBy, along);
  if (ridesEnd(path, far) && !ridesStart(near)) nearBy = reject(farBy, along);

  const points = [...path.points];
  for (let i = near.first; i <= near.last; i++) points[i] = add(points[i]!, nearBy);
  for (let i = far.first; i <= far.last; i++) points[i] = add(points[i]!, farBy);
  return withPoints(design, runner, refit(path, points));
}

/** How much farther than the hand a bend may ride. */
const LONGEST_LEVER = 4;

/** The ride along `way` that shifts the straight nearest to the wish. */
function ridden(path: Path, way: Vec3, along: Vec3, wish: Vec3, range: Range): Vec3 {
  const shift = reject(way, along);
  const square = dot(shift, shift);
  if (square <= ANGLE_TOLERANCE) return [0, 0, 0];
  // A straight nearly along its end's line would have to slide very far to shift a little: it goes part of the way.
  const most = LONGEST_LEVER * norm(wish);
  const by = Math.max(-most, Math.min(most, dot(wish, shift) / square));
  const limited = ridesStart(range)
    ? rideFromStart(path, path.points[range.first]!, by)
    : rideToEnd(path, path.points[range.last]!, by);
  return scale(way, limited);
}
