/** Outward corners of a loop rounded off, tangent to both edges, where these are long enough; inward ones are left. mm. */
import { LENGTH_TOLERANCE } from '../tolerance';
import { angleFrom } from './discs';
import { type Edge, edges, type Loop, type Point2 } from './loop';
import { meetings, pointOnEdge } from './meet';

/** Corners that turn less are joints that run on. */
const LEAST_TURN = 0.01;

type Corner = { readonly centre: Point2; readonly end: number; readonly start: number };

export function breakCorners(loop: Loop, radius: number): Loop {
  const all = edges(loop);
  const corners = all.map((edge, k) => cornerOf(edge, all[(k + 1) % all.length]!, radius));
  // Of two on one edge too short for both, neither.
  const kept = corners.map((corner, k) => {
    const [before, after] = [corners.at(k - 1), corners[(k + 1) % all.length]];
    return corner && (before?.start ?? 0) < corner.end && corner.start < (after?.end ?? 1) ? corner : null;
  });
  return all.flatMap((edge, k): [number, number, number][] => {
    const [from, to] = [kept.at(k - 1)?.start ?? 0, kept[k]?.end ?? 1];
    const [x, y] = from === 0 ? edge.from : pointOnEdge(edge, from);
    // Untouched edges keep their very bulge.
    const bulge = from === 0 && to === 1 ? loop[k]![2] : edge.arc ? Math.tan((edge.arc.turn * (to - from)) / 4) : 0;
    const own: [number, number, number] = [x, y, bulge];
    const corner = kept[k];
    if (!corner) return [own];
    const [a, b] = [pointOnEdge(edge, to), pointOnEdge(all[(k + 1) % all.length]!, corner.start)];
    const angle = ([u, v]: Point2) => Math.atan2(v - corner.centre[1], u - corner.centre[0]);
    return [own, [a[0], a[1], Math.tan(angleFrom(angle(b) - angle(a), 0) / 4)]];
  });
}

/** Where a circle of that radius inside the corner touches both edges. */
function cornerOf(a: Edge, b: Edge, radius: number): Corner | null {
  const [p, q] = [wayAt(a, 1), wayAt(b, 0)];
  const turn = Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1]);
  const [inner, other] = [inward(a, radius), inward(b, radius)];
  if (turn < LEAST_TURN || !inner || !other) return null;
  const away = ({ at }: { at: Point2 }) => Math.hypot(at[0] - a.to[0], at[1] - a.to[1]);
  const met = meetings(inner, other).toSorted((m, n) => away(m) - away(n))[0];
  return met ? { centre: met.at, end: met.s, start: met.t } : null;
}

function wayAt({ from, to, arc }: Edge, share: number): Point2 {
  if (!arc) return [to[0] - from[0], to[1] - from[1]];
  const angle = arc.start + share * arc.turn;
  const sign = Math.sign(arc.turn);
  return [-sign * Math.sin(angle), sign * Math.cos(angle)];
}

/** Moved to its left, with its shares. */
function inward({ from, to, arc }: Edge, by: number): Edge | null {
  if (!arc) {
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const [dx, dy] = [(-by * (to[1] - from[1])) / long, (by * (to[0] - from[0])) / long];
    return { from: [from[0] + dx, from[1] + dy], to: [to[0] + dx, to[1] + dy], arc: null };
  }
  const radius = arc.radius - Math.sign(arc.turn) * by;
  if (radius < LENGTH_TOLERANCE) return null;
  const edge = { from, to, arc: { ...arc, radius } };
  return { ...edge, from: pointOnEdge(edge, 0), to: pointOnEdge(edge, 1) };
}
