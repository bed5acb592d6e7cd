/**
 * One bend more for a runner: what is squeezed from all sides may give way there, and most that is nearly right comes right
 * so. If it can do without after all, simplifying takes the bend out again.
 */
import type { Design, Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { bends } from '../curve/bends';
import type { Header } from '../header/resolve';
import { addScaled, anySquareTo, cross, distance, lerp, scale, sub, unit } from '../vector';
import { byWeight } from './choose';
import type { RunnerTask } from './task';

/** How far to one side, at most, mm. */
const BULGE = 30;
const LEAST_BULGE = 5;
/** Along the leg, from its first point. */
const BETWEEN = [0.3, 0.7] as const;

/**
 * On one of its legs, a long one rather, a little to some side.
 * @param header of the design
 * @returns null where the tooling allows no more bends
 */
export function withBendMore(design: Design, header: Header, r: RunnerTask, random: () => number): Design | null {
  const line = header.runners[r.index]!.centerline;
  if (!line || line.radii.length < 2 || bends(line).length >= r.resolved.tooling.maxBends) return null;
  const points = [...line.points];
  const last = points.length - 2;
  const legs = Array.from({ length: last + 1 }, (_, i) => i);
  const leg = byWeight(legs, (i) => distance(points[i]!, points[i + 1]!) ** 2, random);
  const along = unit(sub(points[leg + 1]!, points[leg]!));
  const side = anySquareTo(along);
  const phi = 2 * Math.PI * random();
  const aside = addScaled(scale(side, Math.cos(phi)), cross(along, side), Math.sin(phi));
  const off = LEAST_BULGE + (BULGE - LEAST_BULGE) * random();
  const out = (p: Vec3): Vec3 => addScaled(p, aside, off);
  const middle = lerp(points[leg]!, points[leg + 1]!, BETWEEN[0] + (BETWEEN[1] - BETWEEN[0]) * random());
  // A bend next to an end lies on its ray: there the new one does, and the old one is free to leave it.
  if (leg === 0) points[1] = out(points[1]!);
  if (leg === last) points[last] = out(points[last]!);
  points.splice(leg + 1, 0, leg === 0 || leg === last ? middle : out(middle));
  const die = Math.min(leg, last - 1);
  const radii = [...line.radii.slice(0, die), line.radii[die]!, ...line.radii.slice(die)];
  const bent = (runner: Runner): Runner => ({ ...runner, points, ...(runner.radii ? { radii } : {}) });
  return { ...design, runners: design.runners.map((runner, i) => (i === r.index ? bent(runner) : runner)) };
}
