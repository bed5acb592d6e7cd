/**
 * The least distance from a link to a box: as for any shape, but most surroundings are boxes, and their distance can be
 * worked out on the spot, with a slope. Nothing is put on the heap. mm.
 */
import { beyond, distanceToBox, leastOverBox } from '../clearance/shapes';
import { best, GOLDEN, LOOK, NARROW, ROUNDING, resolution, strayOf } from './linkSearch';
import { type SolverLink, settlePoint } from './links';

/** Steeper than this, as a part of the chord's square, the slope in its middle tells on which side the least place is. */
const PLAIN = 0.01;

/** How far the link's curve strays from its chords, by how often they were halved, as far as that has been asked. */
const strays = new Float64Array(16);
let known = 0;

/** Where the box is nearest on the link, into `best`, where that is under what stands there. */
export function nearestToBox(link: SolverLink, box: Float64Array): void {
  strays[0] = link.stray;
  known = 0;
  halveBox(link, 0, link.count, 0, box);
}

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
  const stray = strays[deep]!;
  const room = best.distance + stray + ROUNDING;
  if (room > 0 && squared - Math.abs(slope) >= room * room) return;
  chord[0] = ax;
  chord[1] = ay;
  chord[2] = az;
  chord[3] = dx;
  chord[4] = dy;
  chord[5] = dz;
  if (n > 1 && stray > resolution.stray) {
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
    if (deep === known) strays[++known] = strayOf(link, half);
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

/** A distance than which no place of the chord has less, as `fallToBox` found it. */
const fall = new Float64Array(1);

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
