/**
 * Moving a bend. A bend between others goes where it is put and its two legs follow. The first and the last bend ride along
 * the line of their end: pulled along it they slide; pulled aside they cannot follow, so the far end of the straight beside
 * them takes the sideways part, and that straight swings to where the hand went. A continuous bend moves as one. mm.
 */
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { add, addScaled, dot, reject, scale, sub } from '../vector';
import { type Path, pathOf, type Range, rangeAt, ridesEnd, ridesStart, withPoints } from './path';
import { refit } from './refit';
import { carried, rideFromStart, rideToEnd } from './ride';

/** Moves the bend that document point `index` belongs to, so that this point comes to `to`, as far as its end lets it. */
export function movePoint(design: Design, runner: string, index: number, to: Vec3): Design {
  const path = pathOf(design, runner);
  if (index <= 0 || index >= path.points.length - 1) return design;
  return moved(design, path, rangeAt(path, index), sub(to, path.points[index]!));
}

/** @param bend counted from 0 as the bender sees them */
export function moveBend(design: Design, runner: string, bend: number, by: Vec3): Design {
  const path = pathOf(design, runner);
  const range = path.bends[bend];
  return range ? moved(design, path, range, by) : design;
}

/**
 * Slides a bend by a length along its incoming or outgoing straight, which keeps its line; the other straight swings.
 * The first bend has only its incoming line to slide on, the last only its outgoing one.
 */
export function slideBend(design: Design, runner: string, bend: number, along: 'in' | 'out', by: number): Design {
  const path = pathOf(design, runner);
  const range = path.bends[bend];
  if (!range) return design;
  const way = slideDirection(path, range, along);
  return moved(design, path, range, scale(way, by));
}

/** Unit vector of travel along the straight that `slideBend` slides on. */
export function slideDirection(path: Path, range: Range, along: 'in' | 'out'): Vec3 {
  const leg = (index: number) => path.line.directions[path.line.source.indexOf(index)]!;
  if (ridesStart(range)) return path.start.direction;
  if (ridesEnd(path, range)) return path.endDirection;
  return along === 'in' ? leg(path.line.source[path.line.source.indexOf(range.first) - 1]!) : leg(range.last);
}

function moved(design: Design, path: Path, range: Range, by: Vec3): Design {
  const [atStart, atEnd] = [ridesStart(range), ridesEnd(path, range)];
  // A lone bend joins two fixed lines: it has nowhere to go.
  if (atStart && atEnd) return design;
  const points = [...path.points];
  if (!atStart && !atEnd) {
    for (let i = range.first; i <= range.last; i++) points[i] = add(points[i]!, by);
  } else {
    const way = atStart ? path.start.direction : path.endDirection;
    const ridden = atStart
      ? rideFromStart(path, points[range.first]!, dot(by, way))
      : rideToEnd(path, points[range.last]!, dot(by, way));
    for (let i = range.first; i <= range.last; i++) points[i] = addScaled(points[i]!, way, ridden);
    const neighbour = rangeAt(path, atStart ? range.last + 1 : range.first - 1);
    const aside = reject(by, way);
    for (let i = neighbour.first; i <= neighbour.last; i++) points[i] = carried(path, i, aside);
  }
  return withPoints(design, path.runner.id, refit(path, points));
}
