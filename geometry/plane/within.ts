/** What lies in what: a point in a polygon, a loop's middle, and its distance from a point. mm or any one unit. */
import { type Edge, edges, type Loop, loopArea, type Point2 } from './loop';

/** By how often a ray to the right crosses it. */
export function isInPolygon([x, y]: Point2, polygon: readonly Point2[]): boolean {
  let inside = false;
  let [ax, ay] = polygon.at(-1)!;
  for (const [bx, by] of polygon) {
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    [ax, ay] = [bx, by];
  }
  return inside;
}

/** Of its area, exactly: the corners' polygon, and each arc's segment, whose middle lies 4r·sin³(turn/2)/(3(turn − sin turn)) out. */
export function loopCentre(loop: Loop): Point2 {
  const area = loopArea(loop);
  let [sx, sy] = [0, 0];
  // About the first corner, so that far from the origin no digits are lost.
  const [ox, oy] = [loop[0]![0], loop[0]![1]];
  for (const { from, to, arc } of edges(loop)) {
    const [ax, ay, bx, by] = [from[0] - ox, from[1] - oy, to[0] - ox, to[1] - oy];
    const twice = ax * by - bx * ay;
    sx += (twice * (ax + bx)) / 6;
    sy += (twice * (ay + by)) / 6;
    if (!arc) continue;
    const { turn, radius, start, centre } = arc;
    const middle = start + turn / 2;
    const segment = (radius ** 2 * (turn - Math.sin(turn))) / 2;
    const out = (4 * radius * Math.sin(turn / 2) ** 3) / (3 * (turn - Math.sin(turn)));
    sx += segment * (centre[0] - ox + out * Math.cos(middle));
    sy += segment * (centre[1] - oy + out * Math.sin(middle));
  }
  return [ox + sx / area, oy + sy / area];
}

/** How far a point lies from an edge. */
export function distanceToEdge([x, y]: Point2, { from, to, arc }: Edge): number {
  const toEnds = Math.min(Math.hypot(x - from[0], y - from[1]), Math.hypot(x - to[0], y - to[1]));
  if (arc) {
    const share = (Math.atan2(y - arc.centre[1], x - arc.centre[0]) - arc.start) / Math.sign(arc.turn);
    const round = 2 * Math.PI;
    const along = ((share % round) + round) % round;
    if (along > Math.abs(arc.turn)) return toEnds;
    return Math.abs(Math.hypot(x - arc.centre[0], y - arc.centre[1]) - arc.radius);
  }
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : ((x - from[0]) * dx + (y - from[1]) * dy) / squared;
  if (share <= 0 || share >= 1) return toEnds;
  return Math.hypot(x - from[0] - share * dx, y - from[1] - share * dy);
}

export const distanceToLoop = (point: Point2, loopEdges: readonly Edge[]): number =>
  loopEdges.reduce((least, edge) => Math.min(least, distanceToEdge(point, edge)), Number.POSITIVE_INFINITY);
