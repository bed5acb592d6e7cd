/**
 * How much lines are in each other's way and in that of what stands around, in mm²: the squares of what is missing at
 * places along them. Zero where there is room. Fields change by no more than a millimetre in a millimetre, so where there
 * is plenty of room many places are passed over.
 */
import { isTree, type Obstacle } from '../check/obstacles';
import { distanceToBox } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import { SELF_SEPARATION } from '../tolerance';
import type { Line } from './line';

/** A body or surrounding that tubes keep clear of by `clearance`. */
export type Barrier = { readonly shape: Obstacle['shape']; readonly clearance: number };

/** Lines are measured at places only, so that much may go unseen, mm. */
const SPARE = 1;
/** Room beyond which it is not measured how much there is, mm. */
const PLENTY = 60;

/** Two lines; within the bundle of one port or merge they may touch. */
export function crowding(a: Line, b: Line, gap: number): number {
  const need = a.tubeRadius + b.tubeRadius + gap + SPARE;
  const enough = need + PLENTY;
  for (let k = 0; k < 3; k++) if (a.low[k]! - b.high[k]! > need || b.low[k]! - a.high[k]! > need) return 0;
  const meet = a.merge === b.merge;
  const part = a.from === b.from;
  const P = a.at;
  const Q = b.at;
  let sum = 0;
  const lx = b.low[0]!;
  const ly = b.low[1]!;
  const lz = b.low[2]!;
  const hx = b.high[0]!;
  const hy = b.high[1]!;
  const hz = b.high[2]!;
  for (let i = 0; i < a.count; ) {
    const x = P[3 * i]!;
    const y = P[3 * i + 1]!;
    const z = P[3 * i + 2]!;
    // No place of the other line is nearer than the box about it.
    const ox = x < lx ? lx - x : x > hx ? x - hx : 0;
    const oy = y < ly ? ly - y : y > hy ? y - hy : 0;
    const oz = z < lz ? lz - z : z > hz ? z - hz : 0;
    const outside = ox * ox + oy * oy + oz * oz;
    let least = Infinity;
    if (outside >= need * need) least = Math.sqrt(outside);
    else {
      const start = part && i <= a.bundledUntil ? b.bundledUntil + 1 : 0;
      const until = meet && i >= a.bundledFrom ? b.bundledFrom : b.count;
      for (let j = start; j < until; ) {
        const dx = Q[3 * j]! - x;
        const dy = Q[3 * j + 1]! - y;
        const dz = Q[3 * j + 2]! - z;
        const d = Math.sqrt(dx * dx + dy * dy + dz * dz);
        if (d < least) least = d;
        const spare = d - Math.min(least, enough);
        j += spare > b.spacing ? Math.floor(spare / b.spacing) : 1;
      }
      if (least < need) sum += (need - least) ** 2;
    }
    // Bundles end at a place of their own, so from there on nothing may be passed over.
    const free = !meet && !part ? Math.min(least, enough) - need : 0;
    i += free > a.spacing ? Math.floor(free / a.spacing) : 1;
  }
  return sum;
}

/** A line among others, all together. */
export const crowdingAmong = (line: Line, others: readonly Line[], gap: number): number =>
  others.reduce((sum, other) => sum + crowding(line, other, gap), 0);

/** A line against what it must keep clear of. Its ends are flat and stand where they must: places near them do not count. */
export function obstruction(line: Line, barriers: readonly Barrier[]): number {
  const skip = Math.ceil(line.tubeRadius / line.spacing);
  let sum = 0;
  for (const { shape, clearance } of barriers) {
    const need = line.tubeRadius + clearance + SPARE;
    if (isTree(shape)) {
      sum += nearMesh(line, shape, need, skip);
      continue;
    }
    const { centre, reach, signedDistance, box } = shape;
    let far = 0;
    for (let k = 0; k < 3; k++) {
      const out = Math.max(line.low[k]! - centre[k]!, centre[k]! - line.high[k]!, 0);
      far += out * out;
    }
    if (far > (reach + need) ** 2) continue;
    for (let i = skip; i < line.count - skip; ) {
      const x = line.at[3 * i]!;
      const y = line.at[3 * i + 1]!;
      const z = line.at[3 * i + 2]!;
      const room = (box ? distanceToBox(box, x, y, z) : signedDistance(x, y, z)) - need;
      if (room < 0) sum += room * room;
      i += room > line.spacing ? Math.floor(room / line.spacing) : 1;
    }
  }
  return sum;
}

function nearMesh(line: Line, tree: TriangleTree, need: number, skip: number): number {
  let sum = 0;
  for (let i = skip; i < line.count - skip; i++) {
    const least = tree.nearest(line.at[3 * i]!, line.at[3 * i + 1]!, line.at[3 * i + 2]!, need);
    if (least < need) sum += (need - least) ** 2;
  }
  return sum;
}

/** A line against itself: parts farther apart along it than SELF_SEPARATION diameters. */
export function selfCrowding({ at, count, spacing, tubeRadius }: Line): number {
  const need = 2 * tubeRadius;
  const apart = Math.ceil((SELF_SEPARATION * need) / spacing) + 1;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    let least = need;
    const px = at[3 * i]!;
    const py = at[3 * i + 1]!;
    const pz = at[3 * i + 2]!;
    for (let j = i + apart; j < count; ) {
      const x = px - at[3 * j]!;
      const y = py - at[3 * j + 1]!;
      const z = pz - at[3 * j + 2]!;
      const d = Math.sqrt(x * x + y * y + z * z);
      if (d < least) least = d;
      j += d - need > spacing ? Math.floor((d - need) / spacing) : 1;
    }
    if (least < need) sum += (need - least) ** 2;
  }
  return sum;
}
