/**
 * Convex outlines that hug discs, as a belt round pulleys does: what openings, tubes and bosses on a plate are, and what joins
 * them. A rounded rectangle is the belt round four discs, and grows by growing them. Exact arcs and tangent straights. mm, radians.
 */
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance';
import type { Loop, Point2 } from './loop';

/** Two hulls share a disc where it is the very same object. */
export type Disc = { readonly x: number; readonly y: number; readonly r: number };

/** What of a disc a hull shows, from one angle to a greater one; a straight tangent to both leads from each to the next. */
export type HullArc = { readonly disc: Disc; readonly from: number; readonly to: number };

const TURN = 2 * Math.PI;
/** Where the walk begins: at no angle that drawings have, so that no straight lies just there. */
const FIRST_ANGLE = -2.123;

/** `angle` plus whole turns, in [from, from + 2π). */
export const angleFrom = (angle: number, from: number): number => {
  const turned = angle - from - TURN * Math.floor((angle - from) / TURN);
  return from + (turned >= TURN ? 0 : turned);
};

export const onDisc = ({ x, y, r }: Disc, angle: number, out = 0): Point2 => [
  x + (r + out) * Math.cos(angle),
  y + (r + out) * Math.sin(angle),
];

export const grown = (discs: readonly Disc[], by: number): Disc[] => discs.map(({ x, y, r }) => ({ x, y, r: r + by }));

const reach = ({ x, y, r }: Disc, angle: number): number => x * Math.cos(angle) + y * Math.sin(angle) + r;

/** How far the hull reaches in a direction, from the origin. */
export const hullReach = (discs: readonly Disc[], angle: number): number =>
  Math.max(...discs.map((d) => reach(d, angle)));

/** Counter-clockwise; the arc walked last is the one begun with, given once. */
export function hullArcs(discs: readonly Disc[]): HullArc[] {
  let disc = discs.reduce((a, b) => (reach(b, FIRST_ANGLE) > reach(a, FIRST_ANGLE) ? b : a));
  let angle = FIRST_ANGLE;
  const arcs: HullArc[] = [];
  for (;;) {
    const next = nextDisc(disc, angle, discs);
    if (!next || next.angle >= FIRST_ANGLE + TURN) break;
    arcs.push({ disc, from: angle, to: next.angle });
    ({ disc, angle } = next);
  }
  const [first, ...rest] = arcs;
  if (!first) return [{ disc, from: 0, to: TURN }];
  return [...rest, { disc, from: angle, to: first.to + TURN }];
}

/** Which disc overtakes this one first as the direction turns left; of several in line, the farthest. */
function nextDisc(disc: Disc, angle: number, discs: readonly Disc[]): { disc: Disc; angle: number } | null {
  let best: { disc: Disc; angle: number; away: number } | null = null;
  for (const other of discs) {
    const [dx, dy] = [other.x - disc.x, other.y - disc.y];
    const away = Math.hypot(dx, dy);
    if (away <= Math.abs(disc.r - other.r) + LENGTH_TOLERANCE) continue;
    const overtakes = angleFrom(Math.atan2(dy, dx) - Math.acos((disc.r - other.r) / away), angle);
    if (overtakes - angle < ANGLE_TOLERANCE || angle + TURN - overtakes < ANGLE_TOLERANCE) continue;
    const sooner = !best || overtakes < best.angle - ANGLE_TOLERANCE;
    const farther = best && Math.abs(overtakes - best.angle) <= ANGLE_TOLERANCE && away > best.away;
    if (sooner || farther) best = { disc: other, angle: overtakes, away };
  }
  return best;
}

/** An arc as corners of a loop: no more than half a circle each, because not every reader takes more. */
export function arcCorners(disc: Disc, from: number, to: number): [x: number, y: number, bulge: number][] {
  const parts = Math.max(1, Math.ceil((Math.abs(to - from) - ANGLE_TOLERANCE) / Math.PI));
  const turn = (to - from) / parts;
  // Half a circle is known exactly, so that two of them are seen to be a whole one.
  const bulge = Math.abs(Math.abs(turn) - Math.PI) < ANGLE_TOLERANCE ? Math.sign(turn) : Math.tan(turn / 4);
  return Array.from({ length: parts }, (_, k) => [...onDisc(disc, from + turn * k), bulge]);
}

/** The hull's edge, counter-clockwise. A disc of no radius is a sharp corner. */
export function hullLoop(discs: readonly Disc[]): Loop {
  const arcs = hullArcs(discs);
  if (arcs.length === 1) return arcCorners(arcs[0]!.disc, 0, TURN);
  return arcs.flatMap(({ disc, from, to }) => {
    const end: [number, number, number] = [...onDisc(disc, to), 0];
    const turns = disc.r > LENGTH_TOLERANCE && to - from > ANGLE_TOLERANCE;
    return turns ? [...arcCorners(disc, from, to), end] : [end];
  });
}

/** Below 0 inside: the greatest of how far the point lies beyond each tangent of the hull. */
export function distanceToHull(arcs: readonly HullArc[], [px, py]: Point2, out = 0): number {
  let beyond = Number.NEGATIVE_INFINITY;
  for (const { disc, from, to } of arcs) {
    const [x, y] = [px - disc.x, py - disc.y];
    const r = disc.r + out;
    if (angleFrom(Math.atan2(y, x), from) <= to) beyond = Math.max(beyond, Math.hypot(x, y) - r);
    if (arcs.length > 1) beyond = Math.max(beyond, x * Math.cos(to) + y * Math.sin(to) - r);
  }
  return beyond;
}
