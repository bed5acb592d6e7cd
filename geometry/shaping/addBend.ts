/**
 * Adding and removing bends. A new bend splits a straight and is pulled aside. On the first (or last) straight the new point
 * must stay on the end's line, so it becomes the first (or last) bend there and the bend that was is free to take the pull.
 * mm.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { END_POSITION_TOLERANCE } from '../tolerance';
import { add, addScaled, cross, distance, dot, norm, sub } from '../vector';
import { type Path, pathOf, withPoints } from './path';
import { carried, LEAST_LEG } from './ride';

/**
 * @param station from the start of the straight, mm along it @param offset how far the new bend is pulled from there
 * @returns the same design where the runner is one straight: between two fixed ends on one line no single bend can be added
 */
export function addBend(design: Design, runner: string, straight: number, station: number, offset: Vec3): Design {
  const path = pathOf(design, runner);
  const run = path.straights[straight];
  const last = path.points.length - 1;
  if (!run || last === 1) return design;
  const leg = path.line.source.indexOf(run.first);
  const way = path.line.directions[leg]!;
  const from = addScaled(path.points[run.first]!, way, path.line.setbacks[leg - 1] ?? 0);
  const room = distance(path.points[run.first]!, path.points[run.last]!);
  const reach = dot(sub(from, path.points[run.first]!), way) + station;
  const on = addScaled(path.points[run.first]!, way, Math.min(room - LEAST_LEG, Math.max(LEAST_LEG, reach)));

  const points: Vec3[] = [...path.points];
  const pulled = (index: number): Vec3 =>
    last === 2 ? points[index]! : onceFree(path, index, offset, run.first === 0 ? 'start' : 'end');
  if (run.first === 0) points.splice(0, 2, points[0]!, on, last === 2 ? alongEnd(path, offset) : pulled(1));
  else if (run.last === last) points.splice(last - 1, 2, pulled(last - 1), on, points[last]!);
  else points.splice(run.last, 0, add(on, offset));
  return withPoints(design, runner, points, radiiWith(path, run.first));
}

/** The bend that rode on this end's line no longer does: it goes with the pull, unless it rides on the other line too. */
function onceFree(path: Path, index: number, offset: Vec3, end: 'start' | 'end'): Vec3 {
  const last = path.points.length - 1;
  const other = end === 'start' ? last - 1 : 1;
  return index === other ? carried(path, index, offset) : add(path.points[index]!, offset);
}

/** A lone bend keeps to the end's line once another has taken over the start's. */
function alongEnd(path: Path, offset: Vec3): Vec3 {
  const point = path.points[1]!;
  const by = dot(offset, path.endDirection);
  const room = dot(sub(path.points[2]!, point), path.endDirection);
  return addScaled(point, path.endDirection, Math.min(by, Math.max(0, room - LEAST_LEG)));
}

function radiiWith(path: Path, after: number): readonly number[] | undefined {
  const { radii } = path.runner;
  return radii && [...radii.slice(0, after), path.tooling.centerlineRadius, ...radii.slice(after)];
}

/**
 * Takes a bend out; its two straights become one. Next to an end the bend that remains is brought onto the end's line.
 * @returns the same design where the ends cannot be joined without it
 */
export function removeBend(design: Design, runner: string, bend: number): Design {
  const path = pathOf(design, runner);
  const range = path.bends[bend];
  if (!range) return design;
  const count = range.last - range.first + 1;
  const points: Vec3[] = [...path.points];
  points.splice(range.first, count);
  const last = points.length - 1;
  const joined = closeEnds(path, points, range.first === 1, range.first === last);
  if (!joined) return design;
  const radii = path.runner.radii?.filter((_, i) => i + 1 < range.first || i + 1 > range.last);
  return withPoints(design, runner, joined, radii);
}

function closeEnds(path: Path, points: Vec3[], atStart: boolean, atEnd: boolean): Vec3[] | null {
  const last = points.length - 1;
  const { position, direction } = path.start;
  const end = points[last]!;
  if (last === 1) {
    const off = sub(end, position);
    const aside = norm(sub(off, addScaled([0, 0, 0], direction, dot(off, direction))));
    return aside <= END_POSITION_TOLERANCE && norm(cross(direction, path.endDirection)) <= END_POSITION_TOLERANCE
      ? points
      : null;
  }
  if (last === 2) {
    const meeting = meetingPoint(position, direction, end, path.endDirection);
    return meeting && [points[0]!, meeting, end];
  }
  if (atStart) points[1] = onto(points[1]!, position, direction);
  if (atEnd) {
    const back = addScaled([0, 0, 0], path.endDirection, -1);
    points[last - 1] = onto(points[last - 1]!, end, back);
  }
  return points;
}

/** The place on the line from `from` along `way` nearest to `point`, ahead of `from`. */
const onto = (point: Vec3, from: Vec3, way: Vec3): Vec3 =>
  addScaled(from, way, Math.max(LEAST_LEG, dot(sub(point, from), way)));

/** Where the start's line meets the end's, ahead of the one and before the other; null where they pass by each other. */
function meetingPoint(a: Vec3, d: Vec3, b: Vec3, e: Vec3): Vec3 | null {
  const n = cross(d, e);
  const square = dot(n, n);
  if (square === 0) return null;
  const off = sub(b, a);
  const s = dot(cross(off, e), n) / square;
  const t = dot(cross(off, d), n) / square;
  const [p, q] = [addScaled(a, d, s), addScaled(b, e, t)];
  return s >= LEAST_LEG && t <= -LEAST_LEG && distance(p, q) <= END_POSITION_TOLERANCE ? p : null;
}
