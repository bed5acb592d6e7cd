/**
 * Least gap between two stretches of tube with flat ends.
 *
 * The nearest points of two such solids lie side to side (then the line between them is square to both centerlines and
 * passes through both), or on a flat end. So: the least of the stationary centerline distances less both radii; of each
 * end disc to the other's side; of the discs to each other. Centerline distances that are least only because a tube
 * ends there are not gaps: the tube's round end, which it has not, would be measured.
 */
import { addScaled, distance, lerp, sub, unit } from '../vector';
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
const discToSide = (disc: Disc, side: Chain, below: number): Gap | null =>
  leastOnChain(side, (x, y, z) => pointToDisc(disc, x, y, z), below);

/** A lower bound of the gap between two sides, from whole links: what is likely nearest can then be measured first. */
export function roughGap(a: Chain, b: Chain): number {
  let least = Number.POSITIVE_INFINITY;
  for (const p of a.links)
    for (const q of b.links) {
      closestOnSegments(p.points, 0, p.count, q.points, 0, q.count, slot);
      least = Math.min(least, Math.sqrt(slot.squared) - sagitta(p, p.count) - sagitta(q, q.count));
    }
  return least - a.tubeRadius - b.tubeRadius;
}

const slot: Closest = { squared: 0, s: 0, t: 0 };

/** Stationary centerline distances, found by halving the chords of whatever could still be nearer than the best. */
function sides(a: Chain, b: Chain, below: number): Gap | null {
  const radii = a.tubeRadius + b.tubeRadius;
  let best: Gap | null = null;
  let bound = below;

  const lowest = (p: Link, i: number, n: number, q: Link, k: number, m: number): number => {
    closestOnSegments(p.points, i, i + n, q.points, k, k + m, slot);
    return Math.sqrt(slot.squared) - radii - sagitta(p, n) - sagitta(q, m);
  };

  /** `low` is what `lowest` said of this pair of stretches. */
  const search = (p: Link, i: number, n: number, q: Link, k: number, m: number, low: number): void => {
    if (low >= bound - GAP_RESOLUTION || isNowhereStationary(p, i, n, q, k, m)) return;
    if (n === 1 && m === 1) {
      measure(p, i, q, k);
      return;
    }
    // The half that promises more is searched first, so that the other can be dropped against it.
    if (n > 1 && sagitta(p, n) >= sagitta(q, m)) {
      const half = n / 2;
      const first = lowest(p, i, half, q, k, m);
      const second = lowest(p, i + half, half, q, k, m);
      if (first <= second) search(p, i, half, q, k, m, first);
      search(p, i + half, half, q, k, m, second);
      if (first > second) search(p, i, half, q, k, m, first);
    } else {
      const half = m / 2;
      const first = lowest(p, i, n, q, k, half);
      const second = lowest(p, i, n, q, k + half, half);
      if (first <= second) search(p, i, n, q, k, half, first);
      search(p, i, n, q, k + half, half, second);
      if (first > second) search(p, i, n, q, k, half, first);
    }
  };

  const measure = (p: Link, i: number, q: Link, k: number): void => {
    closestOnSegments(p.points, i, i + 1, q.points, k, k + 1, slot);
    const { squared, s, t } = slot;
    const gap = Math.sqrt(squared) - radii;
    if (gap >= bound || !isStationary(p, i, s, q, k, t) || !isStationary(q, k, t, p, i, s)) return;
    const on = lerp(vectorAt(p.points, i), vectorAt(p.points, i + 1), s);
    const off = lerp(vectorAt(q.points, k), vectorAt(q.points, k + 1), t);
    const across = unit(sub(off, on));
    bound = gap;
    const station = p.station + (p.length * (i + s)) / p.count;
    best = { gap, at: addScaled(on, across, a.tubeRadius + gap / 2), station };
  };

  const pairs = a.links.flatMap((p) =>
    b.links.map((q) => ({ p, q, low: lowest(p, 0, p.count, q, 0, q.count) })).filter(({ low }) => low < bound),
  );
  pairs.sort((x, y) => x.low - y.low);
  for (const { p, q, low } of pairs) search(p, 0, p.count, q, 0, q.count, low);
  return best;
}

/**
 * Between chords the true curve's tangent must be square to the joining line, but for the chords' own turn. Without garbage:
 * most pairs of chords that come near each other do so only where a tube ends.
 */
function isStationary(link: Link, i: number, s: number, other: Link, k: number, t: number): boolean {
  if (s > 0 && s < 1) return true;
  const at = i + s;
  if ((link.isFirst && at === 0) || (link.isLast && at === link.count)) return false;
  const [P, Q, T] = [link.points, other.points, link.tangents];
  let along = 0;
  let squared = 0;
  for (let axis = 0; axis < 3; axis++) {
    const q = Q[3 * k + axis]!;
    const across = q + t * (Q[3 * k + 3 + axis]! - q) - P[3 * at + axis]!;
    along += T[3 * at + axis]! * across;
    squared += across * across;
  }
  return Math.abs(along) <= chordTurn(link) * Math.sqrt(squared);
}

/**
 * Whether no line that joins the two stretches is square to both: what is slanted at their middles by more than either can
 * turn and reach. So what two tubes have near each other at a common end is not searched to the last chord.
 */
function isNowhereStationary(p: Link, i: number, n: number, q: Link, k: number, m: number): boolean {
  const [P, Q] = [p.points, q.points];
  const half = (p.length * n) / p.count / 2 + (q.length * m) / q.count / 2;
  let squared = 0;
  for (let axis = 0; axis < 3; axis++) {
    const across = (Q[3 * k + axis]! + Q[3 * (k + m) + axis]! - P[3 * i + axis]! - P[3 * (i + n) + axis]!) / 2;
    between[axis] = across;
    squared += across * across;
  }
  // The middles of arcs' chords lie off the arcs.
  const reach = half + sagitta(p, n) + sagitta(q, m);
  const furthest = Math.sqrt(squared) + reach;
  return isSlanted(p, i, n, reach, furthest) || isSlanted(q, k, m, reach, furthest);
}

const between = new Float64Array(3);

function isSlanted(link: Link, i: number, n: number, reach: number, furthest: number): boolean {
  // The tangent nearest to the middle, and how far others of the stretch turn from it.
  const at = 3 * (i + (n >> 1));
  const turn = n > 1 ? (link.step * n) / 2 : link.step;
  const T = link.tangents;
  const along = T[at]! * between[0]! + T[at + 1]! * between[1]! + T[at + 2]! * between[2]!;
  return Math.abs(along) - reach > (turn + chordTurn(link)) * furthest;
}

/** At a joint to a straight the neighbour's chord turns as well: the finest arc's step, with room, serves both. */
const WIDEST_LEAF_TURN = 0.02;
const chordTurn = (link: Link): number => Math.max(link.step, WIDEST_LEAF_TURN);
