/** Clearances as rows: tube to tube, tube to surrounding, tube with itself. mm. */
import { isTree, momentOf, type Obstacle } from '../check/obstacles';
import { BUNDLE_OVERLAP, SELF_SEPARATION } from '../tolerance';
import { pushOnArc, pushOnStraight } from './bendPath';
import { nearestOnLinks, tubeContact } from './contacts';
import { type LayoutProblem, pull, type SolverRunner } from './layoutProblem';
import { type LinkPlace, type SolverLink, tangentOnLink } from './links';
import type { KeyOf, RowBuilder } from './rowBuilder';
import { isBallClearOfBox, isClearOfBall, isClearOfBox, linksNow, type RunnerLinks } from './runnerLinks';
import { nearestToMesh, nearestToShape, ShapeContacts } from './shapeContacts';

/** Gaps with more room than this cannot close in one step, mm. */
export const REACH = 12;
/** Aimed inside the limit by more than the search's own error, mm. */
export const INSIDE = 0.04;
/** Missing that aim by so much still holds the rule, with room for the search's error, mm. */
export const SLACK = 0.02;

/** Links of all runners, for rows about bodies too; good until the next step. */
export function contactRows(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  rows: RowBuilder,
): readonly RunnerLinks[] {
  const all = problem.runners.map(linksNow);
  for (let i = 0; i < all.length; i++) {
    for (let j = i + 1; j < all.length; j++) pairRows(problem, all[i]!, all[j]!, rows);
    if (problem.runners[i]!.at >= 0) selfRows(all[i]!, rows);
  }
  for (let i = 0; i < all.length; i++) {
    if (problem.runners[i]!.at < 0) continue;
    for (let k = 0; k < obstacles.length; k++) obstacleRows(all[i]!, obstacles[k]!, rows);
  }
  return all;
}

const pairKey = (a: SolverRunner, b: SolverRunner, i: number, j: number): string =>
  `tube-to-tube|${pathOf(a)}|${pathOf(b)}|${i}.${j}`;

function pairRows(problem: LayoutProblem, one: RunnerLinks, other: RunnerLinks, rows: RowBuilder): void {
  const { runner: first, links: a } = one;
  const { runner: second, links: b, balls } = other;
  if ((first.at < 0 && second.at < 0) || a.length === 0 || b.length === 0) return;
  const { tubeToTube } = problem.header;
  const radii = first.resolved.tubeRadius + second.resolved.tubeRadius;
  const shared = first.to.id === second.to.id;
  const furthest = radii + Math.max(0, tubeToTube) + REACH;
  if (areApart(one, other, furthest)) return;
  for (let i = 0; i < a.length; i++) {
    const p = a[i]!;
    if (isOutside(other, p, furthest)) continue;
    const { middleX, middleY, middleZ } = p;
    const far = furthest + p.half + p.stray;
    for (let j = 0; j < b.length; j++) {
      const dx = middleX - balls[4 * j]!;
      const dy = middleY - balls[4 * j + 1]!;
      const dz = middleZ - balls[4 * j + 2]!;
      const reach = far + balls[4 * j + 3]!;
      if (dx * dx + dy * dy + dz * dz >= reach * reach) continue;
      const q = b[j]!;
      const touching = p.bundle !== 0 && p.bundle === q.bundle && (p.bundle < 0 || shared);
      const required = touching ? -BUNDLE_OVERLAP : tubeToTube;
      if (!nearestOnLinks(p, q, radii + required + REACH)) continue;
      const { p: fp, q: fq, distance, x, y, z } = tubeContact;
      // Bundled tubes may touch by 0.05 mm and are drawn to touch: aiming inside there would push them apart for nothing.
      const value = distance - radii - required - INSIDE;
      const offset = rows.addOf(value, false, SLACK, pairKey, first, second, i, j);
      pushAt(p, fp, x, y, z, 1);
      pull(first, rows.array, offset);
      pushAt(q, fq, x, y, z, -1);
      pull(second, rows.array, offset);
    }
  }
}

/** Whether the boxes about two runners stand further apart than `below`. */
function areApart(a: RunnerLinks, b: RunnerLinks, below: number): boolean {
  for (let k = 0; k < 3; k++) if (a.low[k]! - b.high[k]! > below || b.low[k]! - a.high[k]! > below) return true;
  return false;
}

/** Whether a link stands further than `below` from the box about a runner. */
function isOutside({ low, high }: RunnerLinks, link: SolverLink, below: number): boolean {
  const far = below + link.half + link.stray;
  const { middleX, middleY, middleZ } = link;
  return (
    low[0]! - middleX > far ||
    middleX - high[0]! > far ||
    low[1]! - middleY > far ||
    middleY - high[1]! > far ||
    low[2]! - middleZ > far ||
    middleZ - high[2]! > far
  );
}

const selfKey = (r: SolverRunner, _: null, k: number, l: number): string => `self|${pathOf(r)}||${k}.${l}`;

function selfRows({ runner: r, links }: RunnerLinks, rows: RowBuilder): void {
  const apart = SELF_SEPARATION * r.resolved.tube.outsideDiameter;
  const diameter = 2 * r.resolved.tubeRadius;
  for (let k = 0; k < links.length; k++)
    for (let l = k + 1; l < links.length; l++) {
      const p = links[k]!;
      const q = links[l]!;
      if (q.station - p.end < apart) continue;
      if (!nearestOnLinks(p, q, diameter + REACH)) continue;
      const { p: fp, q: fq, distance, x, y, z } = tubeContact;
      const offset = rows.addOf(distance - diameter - INSIDE, false, SLACK, selfKey, r, null, k, l);
      pushAt(p, fp, x, y, z, 1);
      pushAt(q, fq, x, y, z, -1);
      pull(r, rows.array, offset);
    }
}

export const pathOf = (r: SolverRunner): string => `runners/${r.resolved.runner.id}`;

const found = new ShapeContacts();

const obstacleKey = (r: SolverRunner, o: Obstacle, link: number, n: number): string =>
  `surroundings|${pathOf(r)}|surroundings/${o.surrounding.id}|${link}.${n}${momentOf(o)}`;

function obstacleRows(own: RunnerLinks, o: Obstacle, rows: RowBuilder): void {
  const { runner: r, links } = own;
  const { shape } = o;
  const required = r.resolved.tubeRadius + (o.surrounding.clearance ?? 0);
  const below = required + REACH;
  if (isTree(shape)) {
    for (let i = 0; i < links.length; i++) {
      found.count = 0;
      nearestToMesh(links[i]!, shape, below, found);
      addShapeContacts(r, found, required, rows, SLACK, obstacleKey, r, o, i);
    }
    return;
  }
  const { bounds } = shape;
  if (bounds ? isClearOfBox(own, bounds, below) : isClearOfBall(own, shape.centre, shape.reach, below)) return;
  for (let i = 0; i < links.length; i++) {
    if (bounds && isBallClearOfBox(own, i, bounds, below)) continue;
    found.count = 0;
    nearestToShape(links[i]!, shape, below, found);
    if (found.count > 0) addShapeContacts(r, found, required, rows, SLACK, obstacleKey, r, o, i);
  }
}

/**
 * Rows for places of one runner near a shape, one after the other.
 * @param key writes a row's key from `a`, `b`, `i` and the number of the place
 * @returns the first one's offset, for a shape that moves as well
 */
export function addShapeContacts<K, L>(
  r: SolverRunner,
  contacts: ShapeContacts,
  required: number,
  rows: RowBuilder,
  slack: number,
  key: KeyOf<K, L>,
  a: K,
  b: L,
  i: number,
): number {
  const { count, links } = contacts;
  let first = -1;
  for (let n = 0; n < count; n++) {
    const { numbers } = contacts;
    const o = 5 * n;
    const offset = rows.addOf(numbers[o + 1]! - required - INSIDE, false, slack, key, a, b, i, n);
    pushAt(links[n]!, numbers[o]!, numbers[o + 2]!, numbers[o + 3]!, numbers[o + 4]!, 1);
    pull(r, rows.array, offset);
    if (n === 0) first = offset;
  }
  return first;
}

const T = new Float64Array(3);

/**
 * Adds sign·normal to the adjoint of a place. Its part along the tube is left out: sliding along the tube does not
 * change the gap, and where a place was cut at a bundle it stays at the cut.
 */
export const pushPlace = (
  { link, fraction }: LinkPlace,
  normal: readonly [number, number, number],
  sign: number,
): void => pushAt(link, fraction, normal[0], normal[1], normal[2], sign);

function pushAt(link: SolverLink, fraction: number, nx: number, ny: number, nz: number, sign: number): void {
  const { runner, index, isArc } = link;
  tangentOnLink(runner, index, isArc, fraction, T);
  const along = nx * T[0]! + ny * T[1]! + nz * T[2]!;
  const x = sign * (nx - along * T[0]!);
  const y = sign * (ny - along * T[1]!);
  const z = sign * (nz - along * T[2]!);
  if (isArc) pushOnArc(runner.path, index, fraction, x, y, z);
  else {
    const { setbacks, straights } = runner.path;
    const start = index > 0 ? setbacks[index - 1]! : 0;
    pushOnStraight(runner.path, index, start + fraction * straights[index]!, x, y, z);
  }
}
