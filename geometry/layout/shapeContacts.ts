/**
 * Where tubes come near a shape or a mesh, as the solver needs it: the least place on each link, and both ends of a straight.
 * Least distances that stand at a tube's real end are left to the flat-end rules. mm.
 */
import type { Field } from '../clearance/convexMinimum';
import { type ConvexShape, distanceToBox } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import { nearestToBox } from './boxContacts';
import { best, GOLDEN, LOOK, NARROW, ROUNDING, resolution, SQUARE, strayOf } from './linkSearch';
import { pointOnLink, type SolverLink, settlePoint, tangentOnLink } from './links';

const A = new Float64Array(3);
const T = new Float64Array(3);

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

/** The least place of a shape's field on a link, where it is under `below`; both ends as well, if they are. */
export function nearestToShape(link: SolverLink, shape: NearShape, below: number, out: ShapeContacts): void {
  best.distance = below;
  best.p = -1;
  if (shape.box) nearestToBox(link, shape.box);
  else {
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

/** @param stray how far the curve strays from the chord: `strayOf(link, n)` */
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
  const halves = n > 1 && stray > resolution.stray;
  let t = shape.leastOn ? shape.leastOn(P, a, dx, dy, dz) : Number.NaN;
  // Which half comes first is all that a chord which is to be halved is asked, where a look at its middle can tell.
  let isPlain = false;
  if (Number.isNaN(t)) {
    const side = fallOf(f, middle, half, ax, ay, az, dx, dy, dz);
    if (fall[0]! - (halves ? stray : 0) >= best.distance + ROUNDING) return;
    isPlain = halves && side !== 0;
    if (isPlain) t = side < 0 ? 0 : 1;
    else t = leastOnChord(f, ax, ay, az, dx, dy, dz);
  }
  if (!isPlain) {
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

/** Half the length of the stretches of link about which triangles are looked for, mm: about a whole link a scan has too many. */
const SHORT = 6;

/** The least place of a mesh on a link, where it is under `below`: each triangle is a convex shape of its own. */
export function nearestToMesh(link: SolverLink, tree: TriangleTree, below: number, out: ShapeContacts): void {
  best.distance = below;
  searchMesh(link, tree, 0, link.count, 0, 1, below, out.count, out);
}

/** @param n chords from point `i` on; where it is one, from `t0` to `t1` of it */
function searchMesh(
  link: SolverLink,
  tree: TriangleTree,
  i: number,
  n: number,
  t0: number,
  t1: number,
  below: number,
  before: number,
  out: ShapeContacts,
): void {
  const P = link.points;
  const [o, e] = [3 * i, 3 * (i + n)];
  const part = t1 - t0;
  const [wx, wy, wz] = [P[e]! - P[o]!, P[e + 1]! - P[o + 1]!, P[e + 2]! - P[o + 2]!];
  const [ax, ay, az] = [P[o]! + t0 * wx, P[o + 1]! + t0 * wy, P[o + 2]! + t0 * wz];
  const [dx, dy, dz] = [part * wx, part * wy, part * wz];
  const middle = [ax + dx / 2, ay + dy / 2, az + dz / 2] as const;
  const half = Math.sqrt(dx * dx + dy * dy + dz * dz) / 2;
  const stray = n === link.count ? link.stray : strayOf(link, n);
  if (tree.nearest(...middle, best.distance + half + stray) === Number.POSITIVE_INFINITY) return;
  if (half > SHORT) {
    if (n > 1) {
      settlePoint(link, i + n / 2);
      searchMesh(link, tree, i, n / 2, 0, 1, below, before, out);
      searchMesh(link, tree, i + n / 2, n / 2, 0, 1, below, before, out);
    } else {
      const t = (t0 + t1) / 2;
      searchMesh(link, tree, i, 1, t0, t, below, before, out);
      searchMesh(link, tree, i, 1, t, t1, below, before, out);
    }
    return;
  }
  tree.visit(
    middle,
    () => best.distance + half + stray,
    (_a, _b, _c, signedDistance) => {
      const limit = best.distance;
      best.p = -1;
      if (part === 1) halveShape(link, i, n, stray, { signedDistance });
      else if (signedDistance(...middle) - half - stray < limit) {
        const t = leastOnChord(signedDistance, ax, ay, az, dx, dy, dz);
        const value = signedDistance(ax + t * dx, ay + t * dy, az + t * dz);
        if (value < limit) {
          best.distance = value;
          best.p = i + t0 + t * part;
        }
      }
      if (best.p < 0 || best.distance >= limit) return;
      out.count = before;
      push(link, best.p, { signedDistance }, below, out);
    },
  );
}
