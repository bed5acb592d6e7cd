/**
 * The flat ends of tubes as rows: an end disc against another runner's side, against another's end disc, and, where a merge
 * carries it about, against what stands around. mm. Ends at one merge are left out: their places are the merge's own pattern.
 * A mesh is held at the places where it comes nearest to an end, one for each part of its rim and face.
 */

import { remembered } from '../../shared/remember';
import type { Vec3 } from '../../shared/vec3';
import { isTree, momentOf, type Obstacle } from '../check/obstacles';
import type { Disc } from '../clearance/convexMinimum';
import { discToDisc, pointToDisc } from '../clearance/discs';
import { PLACE_NUMBERS, placesNear, SkinPlaces } from '../clearance/skinPlaces';
import type { TriangleTree } from '../clearance/triangleTree';
import { addScaled, distance, dot, norm, reject, scale, sub, unit } from '../vector';
import { discSlope, heldDisc } from './bodyRows';
import { addShapeContacts, INSIDE, pathOf, REACH, SLACK } from './contactRows';
import { type Joint, type LayoutProblem, pull, type SolverRunner } from './layoutProblem';
import { placeAt } from './links';
import type { RowBuilder } from './rowBuilder';
import { isClearOfBall, type RunnerLinks } from './runnerLinks';
import { nearestToShape, ShapeContacts } from './shapeContacts';

/** Kept clear beyond the limit where it costs nothing, mm: a saw cut a little askew reaches so much further. */
const SPARE = 0.12;

/** No slope by central differences is steeper: each of its three parts is at most one, but for rounding. */
const STEEPEST = 1.74;

type End = { readonly runner: SolverRunner; readonly joint: Joint; readonly isStart: boolean; readonly disc: Disc };

export function endRows(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  links: readonly RunnerLinks[],
  rows: RowBuilder,
): void {
  const ends = endsOf(problem);
  const required = problem.header.tubeToTube;
  for (let e = 0; e < ends.length; e++) {
    const end = ends[e]!;
    if (end.joint.merge && end.runner.at >= 0) for (const o of obstacles) aroundRows(end, o, rows);
    for (let j = 0; j < problem.runners.length; j++) {
      const other = problem.runners[j]!;
      if (other === end.runner || meets(end, other) || (other.at < 0 && !end.joint.merge)) continue;
      sideRows(problem, end, links[j]!, required, rows);
    }
    for (let k = e + 1; k < ends.length; k++) {
      const far = ends[k]!;
      if (!end.joint.merge && !far.joint.merge) continue;
      const apart = far.joint.id !== end.joint.id && far.runner !== end.runner;
      if (apart) discRow(end, far, required, rows, e, k - e - 1);
    }
  }
}

/** Of all runners, starts and ends in turn, as their joints stand now. */
function endsOf(problem: LayoutProblem): readonly End[] {
  const ends = endsOfProblem(problem);
  for (let e = 0; e < ends.length; e++) {
    const { runner, joint, isStart, disc } = ends[e]!;
    if (disc.centre !== joint.pose.position) ends[e] = endOf(runner, joint, isStart);
  }
  return ends;
}

const endsOfProblem = remembered((problem: LayoutProblem): End[] =>
  problem.runners.flatMap((runner) => [endOf(runner, runner.from, true), endOf(runner, runner.to, false)]),
);

const aroundKey = (end: End, o: Obstacle, n: number): string =>
  `surroundings|${pathOf(end.runner)}|surroundings/${o.surrounding.id}|${end.isStart ? 'start' : 'end'} ${n}${momentOf(o)}`;

function aroundRows(end: End, o: Obstacle, rows: RowBuilder): void {
  const { disc } = end;
  const { surrounding, shape } = o;
  const required = surrounding.clearance ?? 0;
  const below = required + REACH;
  if (isTree(shape)) {
    meshRows(end, o, shape, required, rows);
    return;
  }
  if (distance(disc.centre, shape.centre) - shape.reach - disc.radius >= below) return;
  const [x, y, z] = disc.centre;
  if (shape.signedDistance(x, y, z) - STEEPEST * disc.radius >= below) return;
  const value = heldDisc(x, y, z, disc.normal, disc.radius, shape.signedDistance);
  if (value >= below) return;
  const slope: Vec3 = [discSlope[0]!, discSlope[1]!, discSlope[2]!];
  const offset = rows.addOf(value - required - INSIDE, false, SLACK, aroundKey, end, o, 0);
  const across = reject(slope, disc.normal);
  const far = norm(across) > 0 ? addScaled(disc.centre, unit(across), -disc.radius) : disc.centre;
  pushDisc(end, far, slope);
  pull(end.runner, rows.array, offset);
}

const places = new SkinPlaces();

/** Long enough that the far end of the tube behind an end is never met, mm. */
const ONWARD = 1e4;

/** The end is the tube behind it: places beside it are looked for as far as the end can tell, to a radius along its leg. */
function meshRows(end: End, o: Obstacle, tree: TriangleTree, required: number, rows: RowBuilder): void {
  const { centre, normal, radius } = end.disc;
  const { straights, bends } = end.runner.path;
  const until = Math.min(radius, Math.max(0, straights[end.isStart ? 0 : bends]!));
  const axis = scale(normal, -1);
  const frustum = { position: centre, axis, length: ONWARD, startRadius: radius, endRadius: radius };
  placesNear({ frustum, until }, tree, required + REACH, places);
  const { numbers } = places;
  for (let k = 0; k < places.count; k++) {
    const at = PLACE_NUMBERS * k;
    const value = numbers[at + 1]!;
    const away: Vec3 = [-numbers[at + 5]!, -numbers[at + 6]!, -numbers[at + 7]!];
    const offset = rows.addOf(value - required - INSIDE, false, SLACK, aroundKey, end, o, numbers[at]!);
    pushLeg(end, addScaled([numbers[at + 2]!, numbers[at + 3]!, numbers[at + 4]!], away, value), away);
    pull(end.runner, rows.array, offset);
  }
}

function endOf(runner: SolverRunner, joint: Joint, isStart: boolean): End {
  const { position, direction } = joint.pose;
  const normal = isStart ? scale(direction, -1) : direction;
  return { runner, joint, isStart, disc: { centre: position, normal, radius: runner.resolved.tubeRadius } };
}

/** Whether the other runner stands at the same port or merge. */
const meets = (end: End, other: SolverRunner): boolean =>
  other.from.id === end.joint.id || other.to.id === end.joint.id;

const sideKey = (end: End, other: SolverRunner, _: number, n: number): string =>
  `tube-to-tube|${pathOf(end.runner)}|${pathOf(other)}|${end.isStart ? 'start' : 'end'}${n}`;

const contacts = new ShapeContacts();

function sideRows(problem: LayoutProblem, end: End, near: RunnerLinks, required: number, rows: RowBuilder): void {
  const { disc } = end;
  const other = near.runner;
  const limit = other.resolved.tubeRadius + required + SPARE;
  const below = limit + REACH;
  if (isClearOfBall(near, disc.centre, disc.radius, below)) return;
  const field = (x: number, y: number, z: number): number => pointToDisc(disc, x, y, z);
  const shape = { signedDistance: field, centre: disc.centre, reach: disc.radius };
  contacts.count = 0;
  for (const link of near.links) nearestToShape(link, shape, below, contacts);
  if (contacts.count === 0) return;
  const first = addShapeContacts(other, contacts, limit, rows, SLACK + SPARE, sideKey, end, other, 0);
  if (!end.joint.merge || end.runner.at < 0) return;
  for (let i = 0; i < contacts.count; i++) {
    const o = 5 * i;
    const { links, numbers } = contacts;
    const at = placeAt({ link: links[i]!, fraction: numbers[o]! });
    pushDisc(end, nearestOnDisc(disc, at), [-numbers[o + 2]!, -numbers[o + 3]!, -numbers[o + 4]!]);
    pull(end.runner, rows.array, first + i * problem.unknowns);
  }
}

const discKey = (a: End, b: End, e: number, k: number): string =>
  `tube-to-tube|${pathOf(a.runner)}|${pathOf(b.runner)}|ends ${e}.${k}`;

function discRow(a: End, b: End, required: number, rows: RowBuilder, e: number, k: number): void {
  const radii = a.disc.radius + b.disc.radius;
  if (distance(a.disc.centre, b.disc.centre) - radii >= required + REACH) return;
  const value = discToDisc(a.disc, b.disc) - required - INSIDE - SPARE;
  if (value >= REACH) return;
  const normal = unit(sub(a.disc.centre, b.disc.centre));
  const offset = rows.addOf(value, false, SLACK + SPARE, discKey, a, b, e, k);
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

/** The same of a place on the leg behind the disc: it swings across as the leg tilts. */
function pushLeg(end: End, p: Vec3, w: Vec3): void {
  pushDisc(end, p, w);
  const { isStart, joint, runner } = end;
  const { bends, directionsBar } = runner.path;
  const leg = isStart ? 0 : 3 * bends;
  const along = dot(sub(p, joint.pose.position), joint.pose.direction);
  for (let k = 0; k < 3; k++) directionsBar[leg + k] = directionsBar[leg + k]! + along * w[k]!;
}
