/**
 * The flat ends of tubes as rows: an end disc against another runner's side, against another's end disc, and, where a merge
 * carries it about, against what stands around. mm. Ends at one merge are left out: their places are the merge's own pattern.
 */

import type { Vec3 } from '../../shared/vec3';
import { isTree, type Obstacle } from '../check/obstacles';
import type { Disc } from '../clearance/convexMinimum';
import { discToDisc, pointToDisc } from '../clearance/discs';
import type { ConvexShape } from '../clearance/shapes';
import { triangleField } from '../clearance/triangleTree';
import { addScaled, distance, dot, norm, reject, scale, sub, unit } from '../vector';
import { heldDisc } from './bodyRows';
import { addShapeContacts, INSIDE, pathOf, REACH, SLACK } from './contactRows';
import { nearestToShape, type ShapeContact } from './contacts';
import { type Joint, type LayoutProblem, pull, type SolverRunner } from './layoutProblem';
import { placeAt, type SolverLink } from './links';
import type { RowBuilder } from './rowBuilder';

/** Kept clear beyond the limit where it costs nothing, mm: a saw cut a little askew reaches so much further. */
const SPARE = 0.12;

type End = { readonly runner: SolverRunner; readonly joint: Joint; readonly isStart: boolean; readonly disc: Disc };

export function endRows(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  links: readonly (readonly SolverLink[])[],
  rows: RowBuilder,
): void {
  const ends = problem.runners.flatMap((runner) => [endOf(runner, true), endOf(runner, false)]);
  const required = problem.header.tubeToTube;
  for (const [e, end] of ends.entries()) {
    if (end.joint.merge && end.runner.at >= 0) for (const o of obstacles) aroundRows(end, o, rows);
    for (const [j, other] of problem.runners.entries()) {
      if (other === end.runner || meets(end, other) || (other.at < 0 && !end.joint.merge)) continue;
      sideRows(
        end,
        other,
        links[j]!,
        required,
        `tube-to-tube|${pathOf(end.runner)}|${pathOf(other)}|${end.isStart ? 'start' : 'end'}`,
        rows,
      );
    }
    for (const [k, far] of ends.slice(e + 1).entries()) {
      const apart = far.joint.id !== end.joint.id && far.runner !== end.runner;
      if (apart && (end.joint.merge || far.joint.merge))
        discRow(end, far, required, `tube-to-tube|${pathOf(end.runner)}|${pathOf(far.runner)}|ends ${e}.${k}`, rows);
    }
  }
}

function aroundRows(end: End, { surrounding, shape }: Obstacle, rows: RowBuilder): void {
  const { disc } = end;
  const required = surrounding.clearance ?? 0;
  const key = `surroundings|${pathOf(end.runner)}|surroundings/${surrounding.id}|${end.isStart ? 'start' : 'end'}`;
  const near = (shape: Pick<ConvexShape, 'signedDistance'>, n: number): void => {
    const { value, slope } = heldDisc(disc.centre, disc.normal, disc.radius, shape);
    if (value >= required + REACH) return;
    const offset = rows.add(value - required - INSIDE, false, `${key} ${n}`, SLACK);
    const across = reject(slope, disc.normal);
    const far = norm(across) > 0 ? addScaled(disc.centre, unit(across), -disc.radius) : disc.centre;
    pushDisc(end, far, slope);
    pull(end.runner, rows.array, offset);
  };
  if (!isTree(shape)) {
    if (distance(disc.centre, shape.centre) - shape.reach - disc.radius < required + REACH) near(shape, 0);
    return;
  }
  let n = 0;
  shape.visit(
    disc.centre,
    () => required + disc.radius + REACH,
    (a, b, c) => near({ signedDistance: triangleField(a, b, c) }, n++),
  );
}

function endOf(runner: SolverRunner, isStart: boolean): End {
  const joint = isStart ? runner.from : runner.to;
  const { position, direction } = joint.pose;
  const normal = isStart ? scale(direction, -1) : direction;
  return { runner, joint, isStart, disc: { centre: position, normal, radius: runner.resolved.tubeRadius } };
}

/** Whether the other runner stands at the same port or merge. */
const meets = (end: End, other: SolverRunner): boolean =>
  other.from.id === end.joint.id || other.to.id === end.joint.id;

function sideRows(
  end: End,
  other: SolverRunner,
  links: readonly SolverLink[],
  required: number,
  key: string,
  rows: RowBuilder,
): void {
  const { disc } = end;
  const field = (x: number, y: number, z: number): number => pointToDisc(disc, x, y, z);
  const limit = other.resolved.tubeRadius + required + SPARE;
  const contacts: ShapeContact[] = [];
  for (const link of links)
    nearestToShape(link, { signedDistance: field, centre: disc.centre, reach: disc.radius }, limit + REACH, contacts);
  const offsets = addShapeContacts(other, contacts, limit, key, rows, SLACK + SPARE);
  if (!end.joint.merge || end.runner.at < 0) return;
  for (const [i, offset] of offsets.entries()) {
    const { p, normal } = contacts[i]!;
    pushDisc(end, nearestOnDisc(disc, placeAt(p)), scale(normal, -1));
    pull(end.runner, rows.array, offset);
  }
}

function discRow(a: End, b: End, required: number, key: string, rows: RowBuilder): void {
  const radii = a.disc.radius + b.disc.radius;
  if (distance(a.disc.centre, b.disc.centre) - radii >= required + REACH) return;
  const value = discToDisc(a.disc, b.disc) - required - INSIDE - SPARE;
  if (value >= REACH) return;
  const normal = unit(sub(a.disc.centre, b.disc.centre));
  const offset = rows.add(value, false, key, SLACK + SPARE);
  for (const [end, sign] of [
    [a, 1],
    [b, -1],
  ] as const) {
    if (!end.joint.merge || end.runner.at < 0) continue;
    pushDisc(end, nearestOnDisc(end.disc, end === a ? b.disc.centre : a.disc.centre), scale(normal, sign));
    pull(end.runner, rows.array, offset);
  }
}

function nearestOnDisc({ centre, normal, radius }: Disc, p: Vec3): Vec3 {
  const d = sub(p, centre);
  const across = addScaled(d, normal, -dot(d, normal));
  const reach = Math.hypot(...across);
  return addScaled(centre, across, reach > radius ? radius / reach : 1);
}

/** Adjoint of a place fixed on an end disc, which moves and tilts with the merge that carries it. */
function pushDisc({ runner: { path }, isStart, joint }: End, p: Vec3, w: Vec3): void {
  const { direction, position } = joint.pose;
  const at = isStart ? 0 : 3 * (path.bends + 1);
  const leg = isStart ? 0 : 3 * path.bends;
  const lever = scale(sub(p, position), -dot(w, direction));
  for (let k = 0; k < 3; k++) {
    path.pointsBar[at + k] = path.pointsBar[at + k]! + w[k]!;
    path.directionsBar[leg + k] = path.directionsBar[leg + k]! + lever[k]!;
  }
}
