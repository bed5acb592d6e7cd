/**
 * Where a closed curve runs into itself: exact crossings of straights and arcs, each pair whose boxes meet. Neighbours share a
 * corner; nearer to it than a cut is wide they are let be. mm.
 */
import { type Bounds2, type Edge, edges, type Loop, loopBounds, type Point2 } from './loop';

/** Nearer than this to the corner they share, mm, two edges are no crossing: rounding of the file that they came in. */
const SHARED_CORNER = 0.02;
/** How far past its end an edge still counts, mm. */
const SLACK = 1e-7;

/** A place where it does, or null. */
export function loopCrossing(loop: Loop): Point2 | null {
  const n = loop.length;
  const all = edges(loop).map((edge, k) => ({ edge, k, box: boxOf(edge) }));
  const byLeft = [...all].sort((a, b) => a.box.min[0] - b.box.min[0]);
  for (const [i, a] of byLeft.entries()) {
    for (let j = i + 1; j < n; j++) {
      const b = byLeft[j]!;
      if (b.box.min[0] > a.box.max[0] + SLACK) break;
      if (b.box.min[1] > a.box.max[1] + SLACK || a.box.min[1] > b.box.max[1] + SLACK) continue;
      const shared = [...((a.k + 1) % n === b.k ? [a.edge.to] : []), ...((b.k + 1) % n === a.k ? [b.edge.to] : [])];
      const at = edgeCrossings(a.edge, b.edge).find(
        ([x, y]) => !shared.some(([u, v]) => Math.hypot(x - u, y - v) < SHARED_CORNER),
      );
      if (at) return at;
    }
  }
  return null;
}

function boxOf({ from, to, arc }: Edge): Bounds2 {
  if (arc) {
    const bulge = Math.tan(arc.turn / 4);
    // The way back is straight, and so within the arc's own box.
    return loopBounds([
      [...from, bulge],
      [...to, 0],
    ]);
  }
  return {
    min: [Math.min(from[0], to[0]), Math.min(from[1], to[1])],
    max: [Math.max(from[0], to[0]), Math.max(from[1], to[1])],
  };
}

function edgeCrossings(a: Edge, b: Edge): Point2[] {
  const places = a.arc
    ? b.arc
      ? circles(a.arc, b.arc)
      : lineAndCircle(b, a.arc)
    : b.arc
      ? lineAndCircle(a, b.arc)
      : lines(a, b);
  return places.filter((p) => isOn(p, a) && isOn(p, b));
}

type Round = { readonly centre: Point2; readonly radius: number };

function lines(a: Edge, b: Edge): Point2[] {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const [dx, dy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const turn = ax * by - ay * bx;
  // Along one another they meet where one's end lies on the other.
  if (Math.abs(turn) <= 1e-12 * Math.hypot(ax, ay) * Math.hypot(bx, by)) {
    const off = Math.abs(dx * ay - dy * ax) / Math.hypot(ax, ay);
    return off > SLACK ? [] : [b.from, b.to, a.from, a.to];
  }
  const s = (dx * by - dy * bx) / turn;
  return [[a.from[0] + s * ax, a.from[1] + s * ay]];
}

function lineAndCircle({ from, to }: Edge, { centre, radius }: Round): Point2[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const along = (centre[0] - from[0]) * ux + (centre[1] - from[1]) * uy;
  const off = (centre[0] - from[0]) * uy - (centre[1] - from[1]) * ux;
  if (Math.abs(off) > radius) return [];
  const half = Math.sqrt(radius * radius - off * off);
  return [along - half, along + half].map((s): Point2 => [from[0] + s * ux, from[1] + s * uy]);
}

function circles(a: Round, b: Round): Point2[] {
  const [dx, dy] = [b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]];
  const apart = Math.hypot(dx, dy);
  // One circle twice: two arcs of it overlap where an end of one lies on the other, which its neighbours' crossings show.
  if (apart < SLACK) return [];
  const along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const squared = a.radius * a.radius - along * along;
  if (squared < 0) return [];
  const half = Math.sqrt(squared);
  const [ux, uy] = [dx / apart, dy / apart];
  return [-half, half].map((s): Point2 => [a.centre[0] + along * ux - s * uy, a.centre[1] + along * uy + s * ux]);
}

/** Of a place on the edge's line or circle: whether it lies between its ends. */
function isOn([x, y]: Point2, { from, to, arc }: Edge): boolean {
  if (arc) {
    const round = 2 * Math.PI;
    const share = (Math.atan2(y - arc.centre[1], x - arc.centre[0]) - arc.start) * Math.sign(arc.turn);
    const along = ((share % round) + round) % round;
    const slack = SLACK / arc.radius;
    return along <= Math.abs(arc.turn) + slack || along >= round - slack;
  }
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy);
  const s = ((x - from[0]) * dx + (y - from[1]) * dy) / long;
  return s >= -SLACK && s <= long + SLACK;
}
