/**
 * Where tubes come near each other or a surrounding, as the solver needs it: one place for each pair of links that is
 * nearer than its limit plus a margin. Least distances that stand at a tube's real end are left to the flat-end rules.
 */
import type { Field } from '../clearance/convexMinimum';
import { type Closest, closestOnSegments } from '../clearance/segments';
import { beyond, type ConvexShape, distanceToBox, leastOverBox } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import { pointOnLink, type SolverLink, settlePoint, tangentOnLink } from './links';

/** How far from square a joint's least distance may stand before the neighbouring link holds the true one. */
const SQUARE = 0.06;
/** Chord pairs are halved until they stray less than this, mm. */
const RESOLUTION = 0.02;

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

/** Sagitta of `n` of a link's chords joined. */
const strayOf = (link: SolverLink, n: number): number =>
  link.isArc ? link.radius * (1 - Math.cos((link.angle * n) / (2 * link.count))) : 0;

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

/** Places on links near a shape, in memory that is used again. */
export class ShapeContacts {
  count = 0;
  readonly links: SolverLink[] = [];
  /** Of each: fraction on its link, the field's value there, the field's unit slope. */
  numbers = new Float64Array(5 * 16);

  add(link: SolverLink, fraction: number, value: number, x: number, y: number, z: number): void {
    const o = 5 * this.count;
    if (o === this.numbers.length) {
      const { numbers } = this;
      this.numbers = new Float64Array(2 * o);
      this.numbers.set(numbers);
    }
    const { numbers } = this;
    this.links[this.count++] = link;
    numbers[o] = fraction;
    numbers[o + 1] = value;
    numbers[o + 2] = x;
    numbers[o + 3] = y;
    numbers[o + 4] = z;
  }
}

/** What is measured against: a shape, or something like one. */
export type NearShape = Pick<ConvexShape, 'signedDistance' | 'centre' | 'reach' | 'leastOn' | 'box'>;

/** Where a chord's bracket is narrow enough, as a part of it: 0.02 mm on a metre. */
const NARROW = 2e-5;

/** The least place of a shape's field on a link, where it is under `below`; both ends as well, if they are. */
export function nearestToShape(link: SolverLink, shape: NearShape, below: number, out: ShapeContacts): void {
  best.distance = below;
  best.p = -1;
  if (shape.box) {
    straysP[0] = link.stray;
    knownP = 0;
    halveBox(link, 0, link.count, 0, shape.box);
  } else {
    const { centre, reach } = shape;
    const { middleX, middleY, middleZ } = link;
    const far = below + link.half + link.stray;
    const x = middleX - centre[0];
    const y = middleY - centre[1];
    const z = middleZ - centre[2];
    const most = far + reach;
    if (x * x + y * y + z * z >= most * most || shape.signedDistance(middleX, middleY, middleZ) >= far) return;
    halveShape(link, 0, link.count, link.stray, shape);
  }
  if (best.p < 0) return;
  push(link, best.p, shape, below, out);
  // A straight alongside a flat face is held at both joints, or the place would jump from one to the other.
  if (link.isArc) return;
  const at = best.p;
  if (!link.isFirst && at > 0) push(link, 0, shape, below, out);
  if (!link.isLast && at < link.count) push(link, link.count, shape, below, out);
}

/** Steeper than this, as a part of the chord's square, the slope in its middle tells on which side the least place is. */
const PLAIN = 0.01;

/** A chord's beginning and the way to its end. */
const chord = new Float64Array(6);

/**
 * As `halveShape`. Of a chord that is to be halved no more is asked than which half comes first and whether either can hold
 * anything: the squared distance D to a box is convex along it, so nowhere less than D − |D'| / 2 from the middle's.
 */
function halveBox(link: SolverLink, i: number, n: number, deep: number, box: Float64Array): void {
  const P = link.points;
  const a = 3 * i;
  const b = 3 * (i + n);
  const ax = P[a]!;
  const ay = P[a + 1]!;
  const az = P[a + 2]!;
  const dx = P[b]! - ax;
  const dy = P[b + 1]! - ay;
  const dz = P[b + 2]! - az;
  const gx = beyond(ax + 0.5 * dx - box[0]!, box[3]!);
  const gy = beyond(ay + 0.5 * dy - box[1]!, box[4]!);
  const gz = beyond(az + 0.5 * dz - box[2]!, box[5]!);
  const squared = gx * gx + gy * gy + gz * gz;
  const slope = dx * gx + dy * gy + dz * gz;
  const stray = straysP[deep]!;
  const room = best.distance + stray + ROUNDING;
  if (room > 0 && squared - Math.abs(slope) >= room * room) return;
  chord[0] = ax;
  chord[1] = ay;
  chord[2] = az;
  chord[3] = dx;
  chord[4] = dy;
  chord[5] = dz;
  if (n > 1 && stray > RESOLUTION) {
    const long = dx * dx + dy * dy + dz * dz;
    let isFirst = slope > 0;
    // Where the chord may dip into the box, or the slope says little, it takes more than the middle.
    if (squared <= long / 4 || Math.abs(slope) <= PLAIN * long) {
      const side = fallToBox(box);
      if (fall[0]! - stray >= best.distance + ROUNDING) return;
      isFirst = side < 0;
      if (side === 0) {
        leastOnBox(box);
        if (least[1]! - stray >= best.distance) return;
        isFirst = least[0]! < 0.5;
      }
    }
    const half = n >> 1;
    settlePoint(link, i + half);
    if (deep === knownP) straysP[++knownP] = strayOf(link, half);
    const near = isFirst ? 0 : half;
    halveBox(link, i + near, half, deep + 1, box);
    halveBox(link, i + half - near, half, deep + 1, box);
    return;
  }
  leastOnBox(box);
  if (least[1]! >= best.distance) return;
  best.distance = least[1]!;
  best.p = i + least[0]! * n;
}

/** Where on a chord the least value was found, as a part of it, and that value. */
const least = new Float64Array(2);

/** Of the distance to a box on the chord. */
function leastOnBox(box: Float64Array): void {
  let t = leastOverBox(box, chord, 0, chord[3]!, chord[4]!, chord[5]!);
  if (Number.isNaN(t)) t = leastWithin(box);
  least[0] = t;
  least[1] = distanceOnChord(box, t);
}

const distanceOnChord = (box: Float64Array, t: number): number =>
  distanceToBox(box, chord[0]! + t * chord[3]!, chord[1]! + t * chord[4]!, chord[2]! + t * chord[5]!);

/** As `leastOnChord`, for a box. */
function leastWithin(box: Float64Array): number {
  let a = 0;
  let b = 1;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let fc = distanceOnChord(box, c);
  let fd = distanceOnChord(box, d);
  while (b - a > NARROW) {
    if (fc <= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - GOLDEN * (b - a);
      fc = distanceOnChord(box, c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + GOLDEN * (b - a);
      fd = distanceOnChord(box, d);
    }
  }
  let t = fc <= fd ? c : d;
  let value = Math.min(fc, fd);
  const first = distanceOnChord(box, 0);
  if (first <= value) {
    value = first;
    t = 0;
  }
  return distanceOnChord(box, 1) <= value ? 1 : t;
}

/** As `fallOf`, for a box. */
function fallToBox(box: Float64Array): -1 | 0 | 1 {
  const half = Math.sqrt(chord[3]! * chord[3]! + chord[4]! * chord[4]! + chord[5]! * chord[5]!) / 2;
  const middle = distanceOnChord(box, 0.5);
  const before = distanceOnChord(box, 0.5 - LOOK);
  const isBefore = before < middle - ROUNDING;
  const lower = isBefore ? before : distanceOnChord(box, 0.5 + LOOK);
  if (!isBefore && lower >= middle - ROUNDING) {
    fall[0] = middle - half;
    return 0;
  }
  fall[0] = Math.min(middle - ((middle - lower) / LOOK) * 0.5, lower - 2 * LOOK * half);
  return isBefore ? -1 : 1;
}

/** What a bound may be off by, mm. */
const ROUNDING = 1e-9;

/**
 * @param stray how far the curve strays from the chord: `strayOf(link, n)`
 */
function halveShape(
  link: SolverLink,
  i: number,
  n: number,
  stray: number,
  shape: Pick<ConvexShape, 'signedDistance' | 'leastOn'>,
): void {
  const f = shape.signedDistance;
  const P = link.points;
  const a = 3 * i;
  const b = 3 * (i + n);
  const ax = P[a]!;
  const ay = P[a + 1]!;
  const az = P[a + 2]!;
  const dx = P[b]! - ax;
  const dy = P[b + 1]! - ay;
  const dz = P[b + 2]! - az;
  const half = Math.sqrt(dx * dx + dy * dy + dz * dz) / 2;
  const middle = f(ax + 0.5 * dx, ay + 0.5 * dy, az + 0.5 * dz);
  if (middle - half - stray >= best.distance) return;
  const halves = n > 1 && stray > RESOLUTION;
  let t = shape.leastOn ? shape.leastOn(P, a, dx, dy, dz) : Number.NaN;
  if (Number.isNaN(t)) {
    const side = fallOf(f, middle, half, ax, ay, az, dx, dy, dz);
    if (fall[0]! - (halves ? stray : 0) >= best.distance + ROUNDING) return;
    t = halves && side !== 0 ? (side < 0 ? 0 : 1) : leastOnChord(f, ax, ay, az, dx, dy, dz);
  }
  const isKnown = !halves || (t !== 0 && t !== 1);
  if (isKnown || shape.leastOn) {
    const value = f(ax + t * dx, ay + t * dy, az + t * dz);
    if (value - stray >= best.distance) return;
    if (!halves) {
      if (value >= best.distance) return;
      best.distance = value;
      best.p = i + t * n;
      return;
    }
  }
  settlePoint(link, i + n / 2);
  const near = t < 0.5 ? 0 : n / 2;
  const less = strayOf(link, n / 2);
  halveShape(link, i + near, n / 2, less, shape);
  halveShape(link, i + n / 2 - near, n / 2, less, shape);
}

/** Half the width over which a chord's middle is probed, as a part of it. */
const LOOK = 1 / 64;

/** A value than which no place of the chord has less, as `fallOf` found it. */
const fall = new Float64Array(1);

/**
 * Toward which end of a chord a convex field falls from its middle: −1, 1, or 0 where that is not plain. A convex function
 * is nowhere under the straight lines that go on from two of its places.
 * @param middle the field there
 */
function fallOf(
  f: Field,
  middle: number,
  half: number,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
): -1 | 0 | 1 {
  const t = 0.5 - LOOK;
  const u = 0.5 + LOOK;
  const before = f(x + t * dx, y + t * dy, z + t * dz);
  const isBefore = before < middle - ROUNDING;
  const lower = isBefore ? before : f(x + u * dx, y + u * dy, z + u * dz);
  if (!isBefore && lower >= middle - ROUNDING) {
    fall[0] = middle - half;
    return 0;
  }
  const onward = middle - ((middle - lower) / LOOK) * 0.5;
  fall[0] = Math.min(onward, lower - 2 * LOOK * half);
  return isBefore ? -1 : 1;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** `minimumOnInterval` along a chord, without the garbage: where, as a part of it. */
function leastOnChord(f: Field, x: number, y: number, z: number, dx: number, dy: number, dz: number): number {
  let a = 0;
  let b = 1;
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let fc = f(x + c * dx, y + c * dy, z + c * dz);
  let fd = f(x + d * dx, y + d * dy, z + d * dz);
  while (b - a > NARROW) {
    if (fc <= fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - GOLDEN * (b - a);
      fc = f(x + c * dx, y + c * dy, z + c * dz);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + GOLDEN * (b - a);
      fd = f(x + d * dx, y + d * dy, z + d * dz);
    }
  }
  let t = fc <= fd ? c : d;
  let least = Math.min(fc, fd);
  const first = f(x, y, z);
  if (first <= least) {
    least = first;
    t = 0;
  }
  return f(x + dx, y + dy, z + dz) <= least ? 1 : t;
}

/** Half the step of the slope's central differences, as `slopeOf` takes it. */
const PROBE = 1e-4;

/** A field's slope at a place, by `slopeAt`. */
const gradient = new Float64Array(3);

/** As `slopeOf`, into `gradient`. */
function slopeAt(f: Field, box: Float64Array | undefined, x: number, y: number, z: number): void {
  const h = 2 * PROBE;
  if (box) {
    gradient[0] = (distanceToBox(box, x + PROBE, y, z) - distanceToBox(box, x - PROBE, y, z)) / h;
    gradient[1] = (distanceToBox(box, x, y + PROBE, z) - distanceToBox(box, x, y - PROBE, z)) / h;
    gradient[2] = (distanceToBox(box, x, y, z + PROBE) - distanceToBox(box, x, y, z - PROBE)) / h;
    return;
  }
  gradient[0] = (f(x + PROBE, y, z) - f(x - PROBE, y, z)) / h;
  gradient[1] = (f(x, y + PROBE, z) - f(x, y - PROBE, z)) / h;
  gradient[2] = (f(x, y, z + PROBE) - f(x, y, z - PROBE)) / h;
}

function push(
  link: SolverLink,
  at: number,
  { signedDistance: f, box }: Pick<ConvexShape, 'signedDistance' | 'box'>,
  below: number,
  out: ShapeContacts,
): void {
  const isStart = at <= 1e-9;
  const isEnd = at >= link.count - 1e-9;
  if ((isStart && link.isFirst) || (isEnd && link.isLast)) return;
  const fraction = link.low + ((link.high - link.low) * at) / link.count;
  pointOnLink(link.runner, link.index, link.isArc, fraction, A, 0);
  const x = A[0]!;
  const y = A[1]!;
  const z = A[2]!;
  const value = box ? distanceToBox(box, x, y, z) : f(x, y, z);
  if (value >= below) return;
  slopeAt(f, box, x, y, z);
  const sx = gradient[0]!;
  const sy = gradient[1]!;
  const sz = gradient[2]!;
  const steepness = Math.sqrt(sx * sx + sy * sy + sz * sz);
  if (steepness === 0) return;
  const shrink = 1 / steepness;
  const nx = sx * shrink;
  const ny = sy * shrink;
  const nz = sz * shrink;
  if (isStart || isEnd) {
    // Near a flat end the tube is not round: a place whose field falls toward that end is not a true least one.
    tangentOnLink(link.runner, link.index, link.isArc, fraction, T);
    const along = T[0]! * nx + T[1]! * ny + T[2]! * nz;
    if (isNearEnd(link, fraction) && Math.abs(along) > SQUARE) return;
  }
  out.add(link, fraction, value, nx, ny, nz);
}

/** Within a tube radius of a real end the ball about a centerline place sticks out of the tube. */
function isNearEnd(link: SolverLink, fraction: number): boolean {
  const station = link.station + ((fraction - link.low) / (link.high - link.low)) * (link.end - link.station);
  const { tubeRadius } = link.runner.resolved;
  return station < tubeRadius || station > link.runner.path.length - tubeRadius;
}

/** The least place of a mesh on a link, where it is under `below`: each triangle is a convex shape of its own. */
export function nearestToMesh(link: SolverLink, tree: TriangleTree, below: number, out: ShapeContacts): void {
  const middle = [link.middleX, link.middleY, link.middleZ] as const;
  const before = out.count;
  best.distance = below;
  tree.visit(
    middle,
    () => best.distance + link.half + link.stray,
    (_a, _b, _c, signedDistance) => {
      const limit = best.distance;
      best.p = -1;
      halveShape(link, 0, link.count, link.stray, { signedDistance });
      if (best.p < 0 || best.distance >= limit) return;
      out.count = before;
      push(link, best.p, { signedDistance }, below, out);
    },
  );
}
