/**
 * What a ruler says of a made tube: from end to end, and how high its underside stands over a flat plate that it lies on by
 * itself. Of the real tube, which may begin before or after the centerline does, trims cut off. mm
 */
import {
  addScaled,
  anySquareTo,
  bends,
  type Centerline,
  cross,
  distance,
  dot,
  LENGTH_TOLERANCE,
  norm,
  pointAt,
  reject,
  type Station,
  sampleCenterline,
  scale,
  sub,
  trimmedLine,
} from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Part } from '../../part';
import type { CheckHeights } from '../report';
import { type Rest, restOf } from './rest';

/** Of the points to draw. */
const SAGITTA = 0.1;

/** A height is that of the lowest point of the tube's section there: at an end, of its rim. */
export function checkHeights({ id, resolved, startTrim }: Part): CheckHeights {
  const line = trimmedLine(resolved, startTrim)!;
  const radius = resolved.tubeRadius;
  const pose = laid(line, restOf(line, radius));
  const underside = ({ position, tangent }: Station): number => {
    const along = dot(tangent, pose.up);
    // What is 0 stands as 0, however it rounds.
    return Math.max(0, pose.place(position)[2] - radius * Math.sqrt(Math.max(0, 1 - along * along)));
  };
  const [start, end] = [pointAt(line, 0), pointAt(line, line.length)];
  return {
    runner: id,
    chord: distance(start.position, end.position),
    heights: [
      { at: 'start', height: underside(start) },
      ...bendMiddles(line).map((middle, i) => ({ at: i + 1, height: underside(middle) })),
      { at: 'end', height: underside(end) },
    ],
    span: norm(reject(sub(end.position, start.position), pose.up)),
    points: sampleCenterline(line, SAGITTA).map(({ position }) => pose.place(position)),
  };
}

/** By angle: of a bend that is stored as several, of all of it. */
function bendMiddles(line: Centerline): Station[] {
  const arcs = line.segments.filter((segment) => segment.kind === 'arc');
  return bends(line).map(({ first, last }) => {
    const end = arcs[last]!.station + arcs[last]!.length;
    return pointAt(line, (arcs[first]!.station + end) / 2);
  });
}

export type Pose = { readonly up: Vec3; readonly place: (point: Vec3) => Vec3 };

/** On the plate z = 0, its start's middle above the origin, its end's above +x. */
export function laid(line: Centerline, { up, tube }: Rest): Pose {
  const start = line.points[0]!;
  const toEnd = reject(sub(line.points.at(-1)!, start), up);
  const length = norm(toEnd);
  const x = length > LENGTH_TOLERANCE ? scale(toEnd, 1 / length) : anySquareTo(up);
  const y = cross(up, x);
  const plate = addScaled(tube.centre, up, -tube.height(up));
  return {
    up,
    place: (point) => {
      const from = sub(point, start);
      return [dot(from, x), dot(from, y), dot(sub(point, plate), up)];
    },
  };
}
