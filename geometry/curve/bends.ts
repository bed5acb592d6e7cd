/**
 * The bends a bender makes: neighbouring arcs of one radius in one plane, turning the same way with no straight between,
 * are one continuous bend of the summed angle (so a U-bend past 170° is stored as two points). Angles in radians.
 */
import {
  ANGLE_TOLERANCE,
  RADIANS,
  SAME_PLANE_TOLERANCE_DEG,
  SAME_RADIUS_TOLERANCE,
  STRAIGHT_TOLERANCE,
} from '../tolerance';
import { angleBetween, cross, norm } from '../vector';
import type { Centerline } from './centerline';

export type Bend = {
  readonly angle: number;
  readonly radius: number;
  /** First and last interior point, counted from 0 among the centerline's bends. */
  readonly first: number;
  readonly last: number;
};

/** Whether arcs `i` and `i + 1` are parts of one continuous bend. */
export function isContinuous(line: Centerline, i: number): boolean {
  const { directions, radii, straights } = line;
  if (i + 1 >= radii.length) return false;
  if (Math.abs(straights[i + 1]!) >= STRAIGHT_TOLERANCE) return false;
  if (Math.abs(radii[i]! - radii[i + 1]!) >= SAME_RADIUS_TOLERANCE) return false;
  const before = cross(directions[i]!, directions[i + 1]!);
  const after = cross(directions[i + 1]!, directions[i + 2]!);
  if (norm(before) < ANGLE_TOLERANCE || norm(after) < ANGLE_TOLERANCE) return false;
  return angleBetween(before, after) <= SAME_PLANE_TOLERANCE_DEG * RADIANS;
}

export function bends(line: Centerline): Bend[] {
  const found: Bend[] = [];
  for (let first = 0; first < line.turns.length; ) {
    let last = first;
    let angle = line.turns[first]!;
    while (isContinuous(line, last)) angle += line.turns[++last]!;
    found.push({ angle, radius: line.radii[first]!, first, last });
    first = last + 1;
  }
  return found;
}

/** Straights between bends as the saw and the bender see them: those inside a continuous bend are left out. */
export function straightIndices(line: Centerline): number[] {
  return line.straights.map((_, i) => i).filter((i) => i === 0 || !isContinuous(line, i - 1));
}
