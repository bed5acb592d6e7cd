/** Where two edges, straight or arcs, meet or cross, and how far apart they are, exactly. mm. */
import { ANGLE_TOLERANCE, LENGTH_TOLERANCE } from '../tolerance';
import type { Edge, Point2 } from './loop';

/** `s` and `t` run from 0 at an edge's start to 1 at its end. */
export type Meeting = { readonly at: Point2; readonly s: number; readonly t: number };

export type Gap = { readonly gap: number; readonly at: Point2; readonly to: Point2 };

export const edgeLength = ({ from, to, arc }: Edge): number =>
  arc ? arc.radius * Math.abs(arc.turn) : Math.hypot(to[0] - from[0], to[1] - from[1]);

/** The point at a share of the edge. */
export function pointOnEdge({ from, to, arc }: Edge, share: number): Point2 {
  if (!arc) return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  const angle = arc.start + share * arc.turn;
  return [arc.centre[0] + arc.radius * Math.cos(angle), arc.centre[1] + arc.radius * Math.sin(angle)];
}

/** The share at which the edge passes nearest to a point that lies on its whole line or circle; beyond [0, 1] off the edge. */
export function shareOn({ from, to, arc }: Edge, [x, y]: Point2): number {
  if (!arc) {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return ((x - from[0]) * dx + (y - from[1]) * dy) / (dx * dx + dy * dy);
  }
  const turned = (Math.atan2(y - arc.centre[1], x - arc.centre[0]) - arc.start) / arc.turn;
  const whole = Math.abs((2 * Math.PI) / arc.turn);
  const share = turned - whole * Math.floor(turned / whole);
  // What the arc leaves out of its circle is halved between its ends.
  return share > (1 + whole) / 2 ? share - whole : share;
}

const within = (share: number, slack: number): boolean => share >= -slack && share <= 1 + slack;

/** Where they cross or touch; nowhere where they lie on one another. Ends count, within the length tolerance. */
export function meetings(a: Edge, b: Edge): Meeting[] {
  const slack = [LENGTH_TOLERANCE / edgeLength(a), LENGTH_TOLERANCE / edgeLength(b)] as const;
  return crossings(a, b).flatMap((at): Meeting[] => {
    const [s, t] = [shareOn(a, at), shareOn(b, at)];
    return within(s, slack[0]) && within(t, slack[1]) ? [{ at, s, t }] : [];
  });
}

/** Of the whole lines and circles. */
function crossings(a: Edge, b: Edge): Point2[] {
  if (a.arc && b.arc) return circleCircle(a.arc.centre, a.arc.radius, b.arc.centre, b.arc.radius);
  if (a.arc) return lineCircle(b, a.arc.centre, a.arc.radius);
  if (b.arc) return lineCircle(a, b.arc.centre, b.arc.radius);
  const [ux, uy, vx, vy] = [a.to[0] - a.from[0], a.to[1] - a.from[1], b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const sine = ux * vy - uy * vx;
  if (Math.abs(sine) <= ANGLE_TOLERANCE * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return [];
  const s = ((b.from[0] - a.from[0]) * vy - (b.from[1] - a.from[1]) * vx) / sine;
  return [[a.from[0] + s * ux, a.from[1] + s * uy]];
}

function lineCircle({ from, to }: Edge, centre: Point2, radius: number): Point2[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const along = (centre[0] - from[0]) * ux + (centre[1] - from[1]) * uy;
  const foot: Point2 = [from[0] + along * ux, from[1] + along * uy];
  const half = halfChord(radius, Math.hypot(centre[0] - foot[0], centre[1] - foot[1]));
  return either(foot, [ux, uy], half);
}

function circleCircle(a: Point2, ra: number, b: Point2, rb: number): Point2[] {
  const away = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (away < LENGTH_TOLERANCE) return [];
  const [ux, uy] = [(b[0] - a[0]) / away, (b[1] - a[1]) / away];
  const along = (away * away + ra * ra - rb * rb) / (2 * away);
  const foot: Point2 = [a[0] + along * ux, a[1] + along * uy];
  return either(foot, [-uy, ux], halfChord(ra, Math.abs(along)));
}

/** Null where the circle is out of reach; 0 where it is touched, within the length tolerance. */
function halfChord(radius: number, off: number): number | null {
  if (off > radius + LENGTH_TOLERANCE) return null;
  return Math.sqrt(Math.max(0, radius * radius - off * off));
}

function either(foot: Point2, [ux, uy]: Point2, half: number | null): Point2[] {
  if (half === null) return [];
  if (half === 0) return [foot];
  return [
    [foot[0] + half * ux, foot[1] + half * uy],
    [foot[0] - half * ux, foot[1] - half * uy],
  ];
}

/** 0 where they meet. */
export function edgeGap(a: Edge, b: Edge): Gap {
  const met = meetings(a, b)[0];
  if (met) return { gap: 0, at: met.at, to: met.at };
  let best: Gap = { gap: Number.POSITIVE_INFINITY, at: a.from, to: b.from };
  const offer = (at: Point2, to: Point2) => {
    const gap = Math.hypot(at[0] - to[0], at[1] - to[1]);
    if (gap < best.gap) best = { gap, at, to };
  };
  for (const end of [a.from, a.to]) for (const to of nearest(b, end)) offer(end, to);
  for (const end of [b.from, b.to]) for (const at of nearest(a, end)) offer(at, end);
  if (a.arc) for (const to of nearest(b, a.arc.centre)) for (const at of nearest(a, to)) offer(at, to);
  if (b.arc) for (const at of nearest(a, b.arc.centre)) for (const to of nearest(b, at)) offer(at, to);
  return best;
}

/** Where on the edge the distance to a point can be least: its ends, and where the way there is square to it. */
function nearest(edge: Edge, p: Point2): Point2[] {
  const { from, to, arc } = edge;
  if (!arc) {
    const share = shareOn(edge, p);
    return within(share, 0) ? [from, to, pointOnEdge(edge, share)] : [from, to];
  }
  const [x, y] = [p[0] - arc.centre[0], p[1] - arc.centre[1]];
  const away = Math.hypot(x, y);
  if (away < LENGTH_TOLERANCE) return [from, to];
  const square = [1, -1].flatMap((way): Point2[] => {
    const k = (way * arc.radius) / away;
    const q: Point2 = [arc.centre[0] + k * x, arc.centre[1] + k * y];
    return within(shareOn(edge, q), 0) ? [q] : [];
  });
  return [from, to, ...square];
}

/** Every edge of one against every edge of the other. */
export function leastGap(as: readonly Edge[], bs: readonly Edge[]): Gap {
  let best: Gap = { gap: Number.POSITIVE_INFINITY, at: [0, 0], to: [0, 0] };
  for (const a of as)
    for (const b of bs) {
      const found = edgeGap(a, b);
      if (found.gap < best.gap) best = found;
    }
  return best;
}
