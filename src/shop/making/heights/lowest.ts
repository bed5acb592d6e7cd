/**
 * The lowest point of a tube under any tilt, exactly: the tube is the discs square to its centerline. Along a straight an end is
 * lowest; along a bend the place where it runs level with its outside down, or else an end, because no bend is tighter than half
 * the diameter. mm, about the tube's centre of mass. Mass is taken as even along the centerline: bending moves metal along, not across.
 */
import { type Arc, addScaled, type Centerline, pointOnSegment, scale, sub } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

export type Lowest = {
  /** The point of the tube that is least along the unit vector `up`. */
  readonly at: (up: Vec3) => Vec3;
  /** How high the centre of mass is above that: over a plate that the tube touches with `up` upward. */
  readonly height: (up: Vec3) => number;
  readonly centre: Vec3;
};

export function lowestOf(line: Centerline, radius: number): Lowest {
  const centre = centreOf(line);
  const ends = line.segments.map((segment) => pointOnSegment(segment, 0));
  const last = line.segments.at(-1)!;
  ends.push(pointOnSegment(last, last.length));
  const discs = ends.map(({ position, tangent }) => ({ p: sub(position, centre), t: tangent }));
  const arcs = line.segments.flatMap((s) => (s.kind === 'arc' ? [{ arc: s, p: sub(s.start, centre) }] : []));

  const at = (up: Vec3): Vec3 => {
    let least = Number.POSITIVE_INFINITY;
    let found: Vec3 = centre;
    for (const { p, t } of discs) {
      const along = t[0] * up[0] + t[1] * up[1] + t[2] * up[2];
      const across = Math.sqrt(Math.max(0, 1 - along * along));
      const height = p[0] * up[0] + p[1] * up[1] + p[2] * up[2] - radius * across;
      if (height >= least) continue;
      least = height;
      const k = across > 0 ? radius / across : 0;
      found = [p[0] - k * (up[0] - along * t[0]), p[1] - k * (up[1] - along * t[1]), p[2] - k * (up[2] - along * t[2])];
    }
    for (const { arc, p } of arcs) {
      const { direction: d, inward: i } = arc;
      const onward = d[0] * up[0] + d[1] * up[1] + d[2] * up[2];
      const aside = i[0] * up[0] + i[1] * up[1] + i[2] * up[2];
      const phi = Math.atan2(-onward, aside);
      if ((phi < 0 ? phi + 2 * Math.PI : phi) >= arc.angle) continue;
      const tilt = Math.sqrt(onward * onward + aside * aside);
      if (tilt === 0) continue;
      const run = (-arc.radius * onward) / tilt;
      const rise = arc.radius * (1 - aside / tilt);
      const height = p[0] * up[0] + p[1] * up[1] + p[2] * up[2] + run * onward + rise * aside - radius;
      if (height >= least) continue;
      least = height;
      found = [
        p[0] + run * d[0] + rise * i[0] - radius * up[0],
        p[1] + run * d[1] + rise * i[1] - radius * up[1],
        p[2] + run * d[2] + rise * i[2] - radius * up[2],
      ];
    }
    return found;
  };
  const height = (up: Vec3): number => {
    const [x, y, z] = at(up);
    return -(x * up[0] + y * up[1] + z * up[2]);
  };
  return { at, height, centre };
}

function centreOf(line: Centerline): Vec3 {
  let sum: Vec3 = [0, 0, 0];
  let length = 0;
  for (const segment of line.segments) {
    const middle = segment.kind === 'arc' ? arcCentre(segment) : pointOnSegment(segment, segment.length / 2).position;
    sum = addScaled(sum, middle, segment.length);
    length += segment.length;
  }
  return scale(sum, 1 / length);
}

/** Half the chord, and the mean of 1 − cos, in the arc's own directions. */
function arcCentre({ start, direction, inward, radius, angle }: Arc): Vec3 {
  const onward = (radius * (1 - Math.cos(angle))) / angle;
  const aside = radius * (1 - Math.sin(angle) / angle);
  return addScaled(addScaled(start, direction, onward), inward, aside);
}
