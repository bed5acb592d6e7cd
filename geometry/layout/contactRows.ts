/** Clearances as rows: tube to tube, tube to surrounding, tube with itself. mm. */
import { remembered } from '../../shared/remember';
import { isTree, type Obstacle } from '../check/obstacles';
import { BUNDLE_OVERLAP, SELF_SEPARATION } from '../tolerance';
import { pushOnArc, pushOnStraight } from './bendPath';
import { isFar, nearestOnLinks, nearestToMesh, nearestToShape, type ShapeContact } from './contacts';
import { type LayoutProblem, pull, type SolverRunner } from './layoutProblem';
import { type LinkPlace, linksOf, type SolverLink, tangentOnLink } from './links';
import type { RowBuilder } from './rowBuilder';

/** Gaps with more room than this cannot close in one step, mm. */
export const REACH = 12;
/** Aimed inside the limit by more than the search's own error, mm. */
export const INSIDE = 0.04;
/** Missing that aim by so much still holds the rule, with room for the search's error, mm. */
export const SLACK = 0.02;

/** Links of all runners, for rows about bodies too. */
export function contactRows(
  problem: LayoutProblem,
  obstacles: readonly Obstacle[],
  rows: RowBuilder,
): readonly (readonly SolverLink[])[] {
  const links = problem.runners.map((r) => (r.at < 0 ? linksOfStill(r) : linksOf(r)));
  for (let i = 0; i < links.length; i++) {
    for (let j = i + 1; j < links.length; j++) pairRows(problem, links[i]!, links[j]!, rows);
    if (problem.runners[i]!.at >= 0) selfRows(links[i]!, rows);
  }
  for (const [i, own] of links.entries()) {
    if (problem.runners[i]!.at < 0) continue;
    boxAbout(own);
    for (const o of obstacles) obstacleRows(own, o, rows);
  }
  return links;
}

/** A runner that stays where it is keeps its links through all steps. */
const linksOfStill = remembered(linksOf);

function pairRows(problem: LayoutProblem, a: readonly SolverLink[], b: readonly SolverLink[], rows: RowBuilder): void {
  const [first, second] = [a[0]?.runner, b[0]?.runner];
  if (!first || !second || (first.at < 0 && second.at < 0)) return;
  const key = `tube-to-tube|${pathOf(first)}|${pathOf(second)}|`;
  const radii = first.resolved.tubeRadius + second.resolved.tubeRadius;
  const shared = first.to.id === second.to.id;
  const furthest = radii + Math.max(0, problem.header.tubeToTube) + REACH;
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j < b.length; j++) {
      const p = a[i]!;
      const q = b[j]!;
      if (isFar(p, q, furthest)) continue;
      const touching = p.bundle !== 0 && p.bundle === q.bundle && (p.bundle < 0 || shared);
      const required = touching ? -BUNDLE_OVERLAP : problem.header.tubeToTube;
      const contact = nearestOnLinks(p, q, radii + required + REACH);
      if (!contact) continue;
      // Bundled tubes may touch by 0.05 mm and are drawn to touch: aiming inside there would push them apart for nothing.
      const value = contact.distance - radii - required - INSIDE;
      const offset = rows.add(value, false, `${key}${i}.${j}`, SLACK);
      pushPlace(contact.p, contact.normal, 1);
      pull(p.runner, rows.array, offset);
      pushPlace(contact.q, contact.normal, -1);
      pull(q.runner, rows.array, offset);
    }
}

function selfRows(links: readonly SolverLink[], rows: RowBuilder): void {
  const r = links[0]?.runner;
  if (!r) return;
  const apart = SELF_SEPARATION * r.resolved.tube.outsideDiameter;
  const diameter = 2 * r.resolved.tubeRadius;
  for (let k = 0; k < links.length; k++)
    for (let l = k + 1; l < links.length; l++) {
      const p = links[k]!;
      const q = links[l]!;
      if (q.station - p.end < apart) continue;
      const contact = nearestOnLinks(p, q, diameter + REACH);
      if (!contact) continue;
      const offset = rows.add(contact.distance - diameter - INSIDE, false, `self|${pathOf(r)}||${k}.${l}`, SLACK);
      pushPlace(contact.p, contact.normal, 1);
      pushPlace(contact.q, contact.normal, -1);
      pull(r, rows.array, offset);
    }
}

export const pathOf = (r: SolverRunner): string => `runners/${r.resolved.runner.id}`;

const found: ShapeContact[] = [];

const low = new Float64Array(3);
const high = new Float64Array(3);

/** The box about a runner's links, into `low` and `high`: most surroundings are nowhere near. */
function boxAbout(links: readonly SolverLink[]): void {
  low.fill(Number.POSITIVE_INFINITY);
  high.fill(Number.NEGATIVE_INFINITY);
  for (const link of links) {
    const half = link.half + link.stray;
    low[0] = Math.min(low[0]!, link.middleX - half);
    low[1] = Math.min(low[1]!, link.middleY - half);
    low[2] = Math.min(low[2]!, link.middleZ - half);
    high[0] = Math.max(high[0]!, link.middleX + half);
    high[1] = Math.max(high[1]!, link.middleY + half);
    high[2] = Math.max(high[2]!, link.middleZ + half);
  }
}

/** Whether a ball surely keeps out of that box by `margin`. */
function isOutside(centre: readonly [number, number, number], radius: number, margin: number): boolean {
  let squared = 0;
  for (let k = 0; k < 3; k++) {
    const d = Math.max(low[k]! - centre[k]!, centre[k]! - high[k]!, 0);
    squared += d * d;
  }
  return squared >= (radius + margin) ** 2;
}

function obstacleRows(links: readonly SolverLink[], o: Obstacle, rows: RowBuilder): void {
  const r = links[0]?.runner;
  if (!r) return;
  const required = r.resolved.tubeRadius + (o.surrounding.clearance ?? 0);
  if (!isTree(o.shape) && isOutside(o.shape.centre, o.shape.reach, required + REACH)) return;
  const key = `surroundings|${pathOf(r)}|surroundings/${o.surrounding.id}|`;
  for (const [i, link] of links.entries()) {
    found.length = 0;
    if (isTree(o.shape)) nearestToMesh(link, o.shape, required + REACH, found);
    else nearestToShape(link, o.shape, required + REACH, found);
    addShapeContacts(r, found, required, `${key}${i}.`, rows);
  }
}

/** Rows for places of one runner near a shape; returns their offsets, for a shape that moves as well. */
export function addShapeContacts(
  r: SolverRunner,
  contacts: readonly ShapeContact[],
  required: number,
  key: string,
  rows: RowBuilder,
  slack = SLACK,
): number[] {
  return contacts.map(({ p, value, normal }, i) => {
    const offset = rows.add(value - required - INSIDE, false, `${key}${i}`, slack);
    pushPlace(p, normal, 1);
    pull(r, rows.array, offset);
    return offset;
  });
}

const T = new Float64Array(3);

/**
 * Adds sign·normal to the adjoint of a place. Its part along the tube is left out: sliding along the tube does not
 * change the gap, and where a place was cut at a bundle it stays at the cut.
 */
export function pushPlace(
  { link, fraction }: LinkPlace,
  normal: readonly [number, number, number],
  sign: number,
): void {
  const { runner, index, isArc } = link;
  tangentOnLink(runner, index, isArc, fraction, T);
  const along = normal[0] * T[0]! + normal[1] * T[1]! + normal[2] * T[2]!;
  const x = sign * (normal[0] - along * T[0]!);
  const y = sign * (normal[1] - along * T[1]!);
  const z = sign * (normal[2] - along * T[2]!);
  if (isArc) pushOnArc(runner.path, index, fraction, x, y, z);
  else {
    const { setbacks, straights } = runner.path;
    const start = index > 0 ? setbacks[index - 1]! : 0;
    pushOnStraight(runner.path, index, start + fraction * straights[index]!, x, y, z);
  }
}
