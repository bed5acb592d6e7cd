/**
 * Least gap between two stretches of tube with flat ends.
 *
 * The nearest points of two such solids lie side to side (then the line between them is square to both centerlines and
 * passes through both), or on a flat end. So: the least of the stationary centerline distances less both radii; of each
 * end disc to the other's side; of the discs to each other. Centerline distances that are least only because a tube
 * ends there are not gaps: the tube's round end, which it has not, would be measured.
 */
import type { Vec3 } from '../../shared/vec3';
import { addScaled, distance, dot, lerp, sub, unit } from '../vector';
import { type Chain, type Link, sagitta, vectorAt } from './chain';
import type { Disc } from './convexMinimum';
import { discToDisc, pointToDisc } from './discs';
import { GAP_RESOLUTION, type Gap, lesser } from './gap';
import { type Closest, closestOnSegments } from './segments';
import { leastOnChain } from './tubeField';

/**
 * @param below gaps that are not less than this are of no interest: the search stops early
 * @returns null where nothing below was found
 */
export function tubeToTube(a: Chain, b: Chain, below = Number.POSITIVE_INFINITY): Gap | null {
  let best = sides(a, b, below);
  const bound = (): number => best?.gap ?? below;
  for (const [i, disc] of a.ends.entries()) {
    const station = endStation(a, i);
    const found = discToSide(disc, b, bound());
    if (found) best = { gap: found.gap, at: disc.centre, station };
    for (const other of b.ends) {
      if (distance(disc.centre, other.centre) - a.tubeRadius - b.tubeRadius >= bound()) continue;
      const gap = discToDisc(disc, other);
      if (gap < bound()) best = { gap, at: lerp(disc.centre, other.centre, 0.5), station };
    }
  }
  for (const disc of b.ends) best = lesser(best, discToSide(disc, a, bound()));
  return best;
}

const endStation = (c: Chain, end: number): number =>
  end === 0 ? c.links[0]!.station : c.links.at(-1)!.station + c.links.at(-1)!.length;

/** An end disc of one tube against the other's side; `at` and `station` on that other's centerline. */
function discToSide(disc: Disc, side: Chain, below: number): Gap | null {
  if (below === Number.POSITIVE_INFINITY) return leastOnChain(side, (x, y, z) => pointToDisc(disc, x, y, z));
  return leastOnChain(side, (x, y, z) => pointToDisc(disc, x, y, z), below);
}

type Node = {
  readonly p: Link;
  readonly i: number;
  readonly n: number;
  readonly q: Link;
  readonly k: number;
  readonly m: number;
};

/** Stationary centerline distances, found by halving the chords of whatever could still be nearer than the best. */
function sides(a: Chain, b: Chain, below: number): Gap | null {
  const radii = a.tubeRadius + b.tubeRadius;
  const slot: Closest = { squared: 0, s: 0, t: 0 };
  let best: Gap | null = null;
  let bound = below;
  const lowest = ({ p, i, n, q, k, m }: Node): number => {
    closestOnSegments(p.points, i, i + n, q.points, k, k + m, slot);
    return Math.sqrt(slot.squared) - radii - sagitta(p, n) - sagitta(q, m);
  };
  const stack: { node: Node; low: number }[] = [];
  const push = (nodes: Node[]): void => {
    const open = nodes.map((node) => ({ node, low: lowest(node) })).filter(({ low }) => low < bound - GAP_RESOLUTION);
    // The most promising is taken first, so that the rest can be dropped against it.
    open.sort((x, y) => y.low - x.low);
    stack.push(...open);
  };
  push(a.links.flatMap((p) => b.links.map((q): Node => ({ p, i: 0, n: p.count, q, k: 0, m: q.count }))));
  for (let top = stack.pop(); top; top = stack.pop()) {
    if (top.low >= bound - GAP_RESOLUTION) continue;
    const { p, i, n, q, k, m } = top.node;
    if (n > 1 || m > 1) {
      if (sagitta(p, n) >= sagitta(q, m) && n > 1)
        push([
          { p, i, n: n / 2, q, k, m },
          { p, i: i + n / 2, n: n / 2, q, k, m },
        ]);
      else
        push([
          { p, i, n, q, k, m: m / 2 },
          { p, i, n, q, k: k + m / 2, m: m / 2 },
        ]);
      continue;
    }
    closestOnSegments(p.points, i, i + 1, q.points, k, k + 1, slot);
    const on = lerp(vectorAt(p.points, i), vectorAt(p.points, i + 1), slot.s);
    const off = lerp(vectorAt(q.points, k), vectorAt(q.points, k + 1), slot.t);
    const across = unit(sub(off, on));
    if (!isStationary(p, i, slot.s, across) || !isStationary(q, k, slot.t, across)) continue;
    const gap = Math.sqrt(slot.squared) - radii;
    if (gap >= bound) continue;
    bound = gap;
    best = {
      gap,
      at: addScaled(on, across, a.tubeRadius + gap / 2),
      station: p.station + (p.length * (i + slot.s)) / p.count,
    };
  }
  return best;
}

/** Between chords the true curve's tangent must be square to the joining line, but for the chords' own turn. */
function isStationary(link: Link, i: number, s: number, across: Vec3): boolean {
  if (s > 0 && s < 1) return true;
  const k = i + s;
  if ((link.isFirst && k === 0) || (link.isLast && k === link.count)) return false;
  return Math.abs(dot(vectorAt(link.tangents, k), across)) <= chordTurn(link);
}

/** At a joint to a straight the neighbour's chord turns as well: the finest arc's step, with room, serves both. */
const WIDEST_LEAF_TURN = 0.02;
const chordTurn = (link: Link): number => Math.max(link.step, WIDEST_LEAF_TURN);
