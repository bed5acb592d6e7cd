/** Whether a loop can be cut: what lies in it, and where it crosses itself. Exact for straights and arcs. mm. */
import { LENGTH_TOLERANCE } from '../tolerance';
import { boxesApart, boxOf } from './box';
import { type Edge, edges, type Loop, type Point2 } from './loop';
import { edgeGap, edgeLength, meetings } from './meet';

/** By how often a ray to the right crosses: each rising or falling run once. On the edge itself, either. */
export function isInLoop([x, y]: Point2, of: readonly Edge[]): boolean {
  let inside = false;
  for (const edge of of)
    for (const { low, high, at } of runs(edge)) if (low > y !== high > y && x < at(y)) inside = !inside;
  return inside;
}

/** A straight, or a part of an arc that only rises or only falls: its ends' heights, and its x at a height between. */
type Run = { readonly low: number; readonly high: number; readonly at: (y: number) => number };

function runs({ from, to, arc }: Edge): Run[] {
  if (!arc) {
    const slope = (to[0] - from[0]) / (to[1] - from[1]);
    return [{ low: from[1], high: to[1], at: (y) => from[0] + (y - from[1]) * slope }];
  }
  const { centre, radius, start, turn } = arc;
  const end = start + turn;
  const first = Math.ceil(Math.min(start, end) / Math.PI - 0.5);
  const last = Math.floor(Math.max(start, end) / Math.PI - 0.5);
  const tops = Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k);
  if (turn < 0) tops.reverse();
  const angles = [start, ...tops.map((k) => (k + 0.5) * Math.PI), end];
  const heights = [from[1], ...tops.map((k) => centre[1] + (k % 2 === 0 ? radius : -radius)), to[1]];
  return heights.slice(1).map((high, k): Run => {
    const side = Math.sign(Math.cos((angles[k]! + angles[k + 1]!) / 2));
    const at = (y: number) => centre[0] + side * Math.sqrt(Math.max(0, radius ** 2 - (y - centre[1]) ** 2));
    return { low: heights[k]!, high, at };
  });
}

/** Where it crosses, touches or runs back on itself, or has an edge of no length; null where it does none of it. */
export function selfCrossing(loop: Loop): Point2 | null {
  const all = edges(loop);
  const short = all.find((e) => edgeLength(e) < LENGTH_TOLERANCE);
  if (short) return short.from;
  const boxes = all.map(boxOf);
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      if (boxesApart(boxes[i]!, boxes[j]!)) continue;
      const met = neighboursMeet(all, i, j);
      if (met) return met;
    }
  return null;
}

function neighboursMeet(all: readonly Edge[], i: number, j: number): Point2 | null {
  const [a, b] = [all[i]!, all[j]!];
  const after = j === i + 1;
  const before = i === 0 && j === all.length - 1;
  if (!after && !before) {
    const { gap, at } = edgeGap(a, b);
    return gap < LENGTH_TOLERANCE ? at : null;
  }
  const shared = [...(after ? [a.to] : []), ...(before ? [a.from] : [])];
  const far = (p: Point2) => shared.every((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) > SAME_CORNER);
  const met = meetings(a, b).find(({ at }) => far(at));
  if (met) return met.at;
  // Edges on one line or circle have no meetings: they run back where an end of one lies on the other.
  const lying = [a.from, a.to, b.from, b.to].find((p, k) => far(p) && liesOn(k < 2 ? b : a, p));
  return lying ?? null;
}

/** A tangent joint is met again a little beside its corner: two edges that part slowly are one line for so long. */
const SAME_CORNER = 1000 * LENGTH_TOLERANCE;

const liesOn = (edge: Edge, [x, y]: Point2): boolean =>
  edgeGap(edge, { from: [x, y], to: [x + LENGTH_TOLERANCE, y], arc: null }).gap < LENGTH_TOLERANCE;
