/**
 * Where tubes come near each other or a surrounding, as the solver needs it: one place for each pair of links that is
 * nearer than its limit plus a margin. Least distances that stand at a tube's real end are left to the flat-end rules.
 */
import { minimumOnInterval } from '../clearance/convexMinimum';
import { type Closest, closestOnSegments } from '../clearance/segments';
import { type ConvexShape, slopeOf } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import { norm, scale } from '../vector';
import { type LinkPlace, pointOnLink, type SolverLink, settlePoint, tangentOnLink } from './links';

/** How far from square a joint's least distance may stand before the neighbouring link holds the true one. */
const SQUARE = 0.06;
/** Chord pairs are halved until they stray less than this, mm. */
const RESOLUTION = 0.02;

const slot: Closest = { squared: 0, s: 0, t: 0 };
const best = { distance: 0, p: 0, q: 0 };
const A = new Float64Array(3);
const B = new Float64Array(3);
const T = new Float64Array(3);

export type TubeContact = { p: LinkPlace; q: LinkPlace; distance: number; normal: readonly [number, number, number] };

/** The nearest places of two links where they are nearer than `below` (centerline to centerline); null otherwise. */
export function nearestOnLinks(p: SolverLink, q: SolverLink, below: number): TubeContact | null {
  if (isFar(p, q, below)) return null;
  best.distance = below;
  best.p = -1;
  halve(p, 0, p.count, q, 0, q.count);
  if (best.p < 0) return null;
  const fp = p.low + ((p.high - p.low) * best.p) / p.count;
  const fq = q.low + ((q.high - q.low) * best.q) / q.count;
  pointOnLink(p.runner, p.index, p.isArc, fp, A, 0);
  pointOnLink(q.runner, q.index, q.isArc, fq, B, 0);
  const [x, y, z] = [A[0]! - B[0]!, A[1]! - B[1]!, A[2]! - B[2]!];
  const distance = Math.max(Math.sqrt(x * x + y * y + z * z), 1e-9);
  const normal = [x / distance, y / distance, z / distance] as const;
  if (!counts(p, best.p, fp, normal) || !counts(q, best.q, fq, normal)) return null;
  return { p: { link: p, fraction: fp }, q: { link: q, fraction: fq }, distance, normal };
}

/** Whether two links are surely no nearer than `below`, from the spheres about them. */
export function isFar(p: SolverLink, q: SolverLink, below: number): boolean {
  const x = p.middleX - q.middleX;
  const y = p.middleY - q.middleY;
  const z = p.middleZ - q.middleZ;
  const reach = below + p.half + q.half + p.stray + q.stray;
  return x * x + y * y + z * z >= reach * reach;
}

/** Sagitta of `n` of a link's chords joined. */
const strayOf = (link: SolverLink, n: number): number =>
  link.isArc ? link.radius * (1 - Math.cos((link.angle * n) / (2 * link.count))) : 0;

function halve(p: SolverLink, i: number, n: number, q: SolverLink, k: number, m: number): void {
  closestOnSegments(p.points, i, i + n, q.points, k, k + m, slot);
  const { squared, s, t } = slot;
  const sp = strayOf(p, n);
  const sq = strayOf(q, m);
  const distance = Math.sqrt(squared);
  if (distance - sp - sq >= best.distance) return;
  const splitP = n > 1 && sp > RESOLUTION;
  const splitQ = m > 1 && sq > RESOLUTION;
  if (!splitP && !splitQ) {
    if (distance >= best.distance) return;
    best.distance = distance;
    best.p = i + s * n;
    best.q = k + t * m;
    return;
  }
  if (splitP && (!splitQ || sp >= sq)) {
    settlePoint(p, i + n / 2);
    const near = s < 0.5 ? 0 : n / 2;
    halve(p, i + near, n / 2, q, k, m);
    halve(p, i + n / 2 - near, n / 2, q, k, m);
  } else {
    settlePoint(q, k + m / 2);
    const near = t < 0.5 ? 0 : m / 2;
    halve(p, i, n, q, k + near, m / 2);
    halve(p, i, n, q, k + m / 2 - near, m / 2);
  }
}

/** Inside a link always; at its joint only if the joining line is square there; at a tube's real end never. */
function counts(link: SolverLink, at: number, fraction: number, normal: readonly [number, number, number]): boolean {
  if (at > 1e-9 && at < link.count - 1e-9) return true;
  const isStart = at <= 1e-9;
  if (isStart ? link.isFirst : link.isLast) return false;
  tangentOnLink(link.runner, link.index, link.isArc, fraction, T);
  // Where the stretch was cut at a bundle the neighbour obeys another limit, so the cut itself counts.
  const isCut = isStart ? link.low > 0 : link.high < 1;
  return isCut || Math.abs(T[0]! * normal[0] + T[1]! * normal[1] + T[2]! * normal[2]) <= SQUARE;
}

export type ShapeContact = { p: LinkPlace; value: number; normal: readonly [number, number, number] };

/** Where a chord's bracket is narrow enough, as a part of it: 0.02 mm on a metre. */
const NARROW = 2e-5;

/** The least place of a shape's field on a link, where it is under `below`; both ends as well, if they are. */
export function nearestToShape(link: SolverLink, shape: ConvexShape, below: number, out: ShapeContact[]): void {
  const f = shape.signedDistance;
  const { centre, reach } = shape;
  const far = below + link.half + link.stray;
  const [x, y, z] = [link.middleX - centre[0], link.middleY - centre[1], link.middleZ - centre[2]];
  if (x * x + y * y + z * z >= (far + reach) ** 2 || f(link.middleX, link.middleY, link.middleZ) >= far) return;
  best.distance = below;
  best.p = -1;
  halveShape(link, 0, link.count, shape);
  if (best.p < 0) return;
  push(link, best.p, shape, below, out);
  // A straight alongside a flat face is held at both joints, or the place would jump from one to the other.
  if (link.isArc) return;
  if (!link.isFirst && best.p > 0) push(link, 0, shape, below, out);
  if (!link.isLast && best.p < link.count) push(link, link.count, shape, below, out);
}

function halveShape(
  link: SolverLink,
  i: number,
  n: number,
  shape: Pick<ConvexShape, 'signedDistance' | 'leastOn'>,
): void {
  const { signedDistance: f, leastOn } = shape;
  const P = link.points;
  const [a, b] = [3 * i, 3 * (i + n)];
  const [ax, ay, az] = [P[a]!, P[a + 1]!, P[a + 2]!];
  const [dx, dy, dz] = [P[b]! - ax, P[b + 1]! - ay, P[b + 2]! - az];
  const at = (t: number): number => f(ax + t * dx, ay + t * dy, az + t * dz);
  const stray = strayOf(link, n);
  const half = Math.sqrt(dx * dx + dy * dy + dz * dz) / 2;
  if (at(0.5) - half - stray >= best.distance) return;
  let t = leastOn ? leastOn(P, a, dx, dy, dz) : Number.NaN;
  let value = at(t);
  if (Number.isNaN(t)) ({ value, t } = minimumOnInterval(at, 0, 1, NARROW));
  if (value - stray >= best.distance) return;
  if (n > 1 && stray > RESOLUTION) {
    settlePoint(link, i + n / 2);
    const near = t < 0.5 ? 0 : n / 2;
    halveShape(link, i + near, n / 2, shape);
    halveShape(link, i + n / 2 - near, n / 2, shape);
    return;
  }
  if (value >= best.distance) return;
  best.distance = value;
  best.p = i + t * n;
}

function push(link: SolverLink, at: number, shape: ConvexShape, below: number, out: ShapeContact[]): void {
  const isStart = at <= 1e-9;
  const isEnd = at >= link.count - 1e-9;
  if ((isStart && link.isFirst) || (isEnd && link.isLast)) return;
  const fraction = link.low + ((link.high - link.low) * at) / link.count;
  pointOnLink(link.runner, link.index, link.isArc, fraction, A, 0);
  const [x, y, z] = [A[0]!, A[1]!, A[2]!];
  const f = shape.signedDistance;
  const value = f(x, y, z);
  if (value >= below) return;
  const slope = slopeOf(f, x, y, z);
  const steepness = norm(slope);
  if (steepness === 0) return;
  const normal = scale(slope, 1 / steepness);
  if (isStart || isEnd) {
    // Near a flat end the tube is not round: a place whose field falls toward that end is not a true least one.
    tangentOnLink(link.runner, link.index, link.isArc, fraction, T);
    const along = T[0]! * normal[0] + T[1]! * normal[1] + T[2]! * normal[2];
    if (isNearEnd(link, fraction) && Math.abs(along) > SQUARE) return;
  }
  out.push({ p: { link, fraction }, value, normal });
}

/** Within a tube radius of a real end the ball about a centerline place sticks out of the tube. */
function isNearEnd(link: SolverLink, fraction: number): boolean {
  const station = link.station + ((fraction - link.low) / (link.high - link.low)) * (link.end - link.station);
  const { tubeRadius } = link.runner.resolved;
  return station < tubeRadius || station > link.runner.path.length - tubeRadius;
}

/** The least place of a mesh on a link, where it is under `below`: each triangle is a convex shape of its own. */
export function nearestToMesh(link: SolverLink, tree: TriangleTree, below: number, out: ShapeContact[]): void {
  const middle = [link.middleX, link.middleY, link.middleZ] as const;
  const found: ShapeContact[] = [];
  best.distance = below;
  tree.visit(
    middle,
    () => best.distance + link.half + link.stray,
    (a, _b, _c, signedDistance) => {
      const limit = best.distance;
      best.p = -1;
      halveShape(link, 0, link.count, { signedDistance });
      if (best.p < 0 || best.distance >= limit) return;
      found.length = 0;
      push(link, best.p, { signedDistance, centre: a, reach: 0 }, below, found);
    },
  );
  out.push(...found);
}
