/** Rules on one runner alone: routed, inlet, ends, straights, bend angles, number of bends, radii. */

import { bends, straightIndices } from '../curve/bends';
import type { Centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import type { ResolvedRunner } from '../header/resolve';
import {
  DEGREES,
  END_DIRECTION_TOLERANCE_DEG,
  END_POSITION_TOLERANCE,
  SAME_RADIUS_TOLERANCE,
  STRAIGHT_TOLERANCE,
} from '../tolerance';
import { angleBetween, distance, lerp } from '../vector';
import type { Problem } from './report';
import { bendNumber, deg, type Say } from './words';

/** Beyond this a point turns the tube back on itself and its tangents no longer meet anywhere near, degrees. */
const REVERSAL = 179;
/** Angles are compared as the bender's scale can be read. */
const ANGLE_READING = 0.01;

export function checkShape(r: ResolvedRunner, say: Say): Problem[] {
  const id = r.runner.id;
  const where = `runners/${id}`;
  if (!r.centerline) {
    const message = `Runner ${id} is not routed: give it points, or let the router lay it.`;
    return [{ rule: 'routed', where, found: 'no points', allowed: 'points', message }];
  }
  return [
    ...checkEnds(r, r.centerline, where, say),
    ...checkStraights(r, r.centerline, where, say),
    ...checkBends(r, r.centerline, where),
    ...checkRadii(r, where, say),
  ];
}

function checkEnds(r: ResolvedRunner, line: Centerline, where: string, say: Say): Problem[] {
  const id = r.runner.id;
  const problems: Problem[] = [];
  if (!r.end) {
    const message = `Runner ${id} has no inlet of ${r.runner.to.merge} chosen: name one, or balance takes the nearest free one.`;
    problems.push({ rule: 'inlet', where: `${where}/to/inlet`, found: null, allowed: 'an inlet', message });
  }
  const ends = [
    { name: 'start', pose: r.start, point: line.points[0]!, direction: line.directions[0]! },
    { name: 'end', pose: r.end, point: line.points.at(-1)!, direction: line.directions.at(-1)! },
  ];
  for (const { name, pose, point, direction } of ends) {
    if (!pose) continue;
    const off = distance(point, pose.position);
    if (off > END_POSITION_TOLERANCE)
      problems.push({
        rule: 'end',
        where: `${where}/${name}`,
        found: off,
        allowed: END_POSITION_TOLERANCE,
        message: `Runner ${id}'s ${name} is ${say(off)} from its place: balance sets it there.`,
        at: point,
      });
    const askew = angleBetween(direction, pose.direction) * DEGREES;
    if (askew > END_DIRECTION_TOLERANCE_DEG)
      problems.push({
        rule: 'end',
        where: `${where}/${name}`,
        found: askew,
        allowed: END_DIRECTION_TOLERANCE_DEG,
        message: `Runner ${id}'s ${name} points ${deg(askew)} off its ${name === 'start' && 'port' in r.runner.from ? 'port' : 'collector'}'s direction: balance turns it true.`,
        at: point,
      });
  }
  return problems;
}

function checkStraights(r: ResolvedRunner, line: Centerline, where: string, say: Say): Problem[] {
  const { firstStraight, betweenStraight, lastStraight } = r.tooling;
  const last = line.straights.length - 1;
  return straightIndices(line).flatMap((i): Problem[] => {
    const least = Math.max(
      i === 0 ? firstStraight : 0,
      i === last ? lastStraight : 0,
      i > 0 && i < last ? betweenStraight : 0,
    );
    const found = line.straights[i]!;
    if (found >= least - STRAIGHT_TOLERANCE) return [];
    const between =
      i === 0
        ? 'before the first bend'
        : i === last
          ? 'after the last bend'
          : `between bends ${bendNumber(line, i - 1)} and ${bendNumber(line, i)}`;
    const message =
      found < 0
        ? `Runner ${r.runner.id}: the bends overlap by ${say(-found)} ${between}; ${say(least)} of straight is needed there: move the bends apart.`
        : `Runner ${r.runner.id} has ${say(found)} of straight ${between}, ${say(least - found)} short of ${say(least)}: lengthen it.`;
    const at = lerp(line.points[i]!, line.points[i + 1]!, 0.5);
    return [{ rule: 'straight', where: `${where}/straights/${i}`, found, allowed: least, message, at }];
  });
}

function checkBends(r: ResolvedRunner, line: Centerline, where: string): Problem[] {
  const { maxBendAngle, maxBends } = r.tooling;
  const list = bends(line);
  const problems: Problem[] = [];
  for (const [k, bend] of list.entries()) {
    const angle = bend.angle * DEGREES;
    const at = line.points[bend.first + 1]!;
    if (angle > maxBendAngle + ANGLE_READING) {
      const message = `Runner ${r.runner.id}, bend ${k + 1} turns ${deg(angle)}; the tooling makes at most ${deg(maxBendAngle)}: share the turn with another bend.`;
      problems.push({ rule: 'angle', where: `${where}/bends/${k}`, found: angle, allowed: maxBendAngle, message, at });
    }
    for (let i = bend.first; i <= bend.last; i++) {
      const turn = line.turns[i]! * DEGREES;
      if (turn <= REVERSAL) continue;
      const point = line.source[i + 1]!;
      const message = `Runner ${r.runner.id}, point ${point + 1} reverses (${deg(turn)}): store so wide a bend as two points.`;
      problems.push({ rule: 'angle', where: `${where}/points/${point}`, found: turn, allowed: REVERSAL, message, at });
    }
  }
  if (list.length > maxBends) {
    const message = `Runner ${r.runner.id} has ${list.length} bends; at most ${maxBends} are allowed: take one out.`;
    const at = pointAt(line, line.length / 2).position;
    problems.push({ rule: 'bends', where, found: list.length, allowed: maxBends, message, at });
  }
  return problems;
}

function checkRadii(r: ResolvedRunner, where: string, say: Say): Problem[] {
  const least = r.tubeRadius;
  return (r.centerline?.radii ?? []).flatMap((radius, i): Problem[] => {
    const at = r.centerline!.points[i + 1]!;
    const place = { where: `${where}/radii/${r.centerline!.source[i + 1]! - 1}`, found: radius, at };
    if (radius < least - SAME_RADIUS_TOLERANCE) {
      const message = `Runner ${r.runner.id}, bend at point ${i + 2}: a radius of ${say(radius)} is less than half the tube's diameter (${say(least)}): use a larger die.`;
      return [{ rule: 'radius', ...place, allowed: least, message }];
    }
    return [];
  });
}
