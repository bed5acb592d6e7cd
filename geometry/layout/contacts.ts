/**
 * Where tubes come near each other, as the solver needs it: one place for each pair of links that is nearer than its limit
 * plus a margin. Least distances that stand at a tube's real end are left to the flat-end rules.
 */
import { type Closest, closestOnSegments } from '../clearance/segments';
import { resolution, SQUARE, strayOf } from './linkSearch';
import { pointOnLink, type SolverLink, settlePoint, tangentOnLink } from './links';

const slot: Closest = { squared: 0, s: 0, t: 0 };
const best = { distance: 0, p: 0, q: 0 };
const A = new Float64Array(3);
const B = new Float64Array(3);
const T = new Float64Array(3);

/** Places on two links by their fractions, and the unit vector from the second's to the first's. */
export type TubeContact = { p: number; q: number; distance: number; x: number; y: number; z: number };

/** What `nearestOnLinks` found last. */
export const tubeContact: TubeContact = { p: 0, q: 0, distance: 0, x: 0, y: 0, z: 0 };

/** Whether two links come nearer than `below` (centerline to centerline); where is left in `tubeContact`. */
export function nearestOnLinks(p: SolverLink, q: SolverLink, below: number): boolean {
  if (isFar(p, q, below)) return false;
  best.distance = below;
  best.p = -1;
  straysP[0] = p.stray;
  straysQ[0] = q.stray;
  knownP = 0;
  knownQ = 0;
  halve(p, 0, p.count, 0, q, 0, q.count, 0);
  if (best.p < 0) return false;
  const fp = p.low + ((p.high - p.low) * best.p) / p.count;
  const fq = q.low + ((q.high - q.low) * best.q) / q.count;
  pointOnLink(p.runner, p.index, p.isArc, fp, A, 0);
  pointOnLink(q.runner, q.index, q.isArc, fq, B, 0);
  let x = A[0]! - B[0]!;
  let y = A[1]! - B[1]!;
  let z = A[2]! - B[2]!;
  const distance = Math.max(Math.sqrt(x * x + y * y + z * z), 1e-9);
  x /= distance;
  y /= distance;
  z /= distance;
  if (!counts(p, best.p, fp, x, y, z) || !counts(q, best.q, fq, x, y, z)) return false;
  const out = tubeContact;
  out.p = fp;
  out.q = fq;
  out.distance = distance;
  out.x = x;
  out.y = y;
  out.z = z;
  return true;
}

/** Whether two links are surely no nearer than `below`, from the spheres about them. */
export function isFar(p: SolverLink, q: SolverLink, below: number): boolean {
  const x = p.middleX - q.middleX;
  const y = p.middleY - q.middleY;
  const z = p.middleZ - q.middleZ;
  const reach = below + p.half + q.half + p.stray + q.stray;
  return x * x + y * y + z * z >= reach * reach;
}

/**
 * How far a link's curve strays from its chords, by how often they were halved: numbers handed from call to call would each
 * be put on the heap.
 */
const straysP = new Float64Array(16);
const straysQ = new Float64Array(16);
let knownP = 0;
let knownQ = 0;

/** @param deepP, deepQ how often the links were halved to come to these chords */
function halve(
  p: SolverLink,
  i: number,
  n: number,
  deepP: number,
  q: SolverLink,
  k: number,
  m: number,
  deepQ: number,
): void {
  closestOnSegments(p.points, i, i + n, q.points, k, k + m, slot);
  const { squared, s, t } = slot;
  const sp = straysP[deepP]!;
  const sq = straysQ[deepQ]!;
  const distance = Math.sqrt(squared);
  if (distance - sp - sq >= best.distance) return;
  const splitP = n > 1 && sp > resolution.stray;
  const splitQ = m > 1 && sq > resolution.stray;
  if (!splitP && !splitQ) {
    if (distance >= best.distance) return;
    best.distance = distance;
    best.p = i + s * n;
    best.q = k + t * m;
    return;
  }
  if (splitP && (!splitQ || sp >= sq)) {
    const half = n >> 1;
    settlePoint(p, i + half);
    if (deepP === knownP) straysP[++knownP] = strayOf(p, half);
    const near = s < 0.5 ? 0 : half;
    halve(p, i + near, half, deepP + 1, q, k, m, deepQ);
    halve(p, i + half - near, half, deepP + 1, q, k, m, deepQ);
  } else {
    const half = m >> 1;
    settlePoint(q, k + half);
    if (deepQ === knownQ) straysQ[++knownQ] = strayOf(q, half);
    const near = t < 0.5 ? 0 : half;
    halve(p, i, n, deepP, q, k + near, half, deepQ + 1);
    halve(p, i, n, deepP, q, k + half - near, half, deepQ + 1);
  }
}

/** Inside a link always; at its joint only if the joining line is square there; at a tube's real end never. */
function counts(link: SolverLink, at: number, fraction: number, x: number, y: number, z: number): boolean {
  if (at > 1e-9 && at < link.count - 1e-9) return true;
  const isStart = at <= 1e-9;
  if (isStart ? link.isFirst : link.isLast) return false;
  tangentOnLink(link.runner, link.index, link.isArc, fraction, T);
  // Where the stretch was cut at a bundle the neighbour obeys another limit, so the cut itself counts.
  const isCut = isStart ? link.low > 0 : link.high < 1;
  return isCut || Math.abs(T[0]! * x + T[1]! * y + T[2]! * z) <= SQUARE;
}
