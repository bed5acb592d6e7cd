/** Shapes of a length asked, found in families of one parameter: thousands are walked, so all is in flat numbers. mm. */
import { setback } from '../curve/centerline';

/** Steps by which a family of shapes is walked to find those of the length asked. */
const WALK = 10;
/** Steps by which that length is neared, and near enough, mm. */
const NEARINGS = 12;
const CLOSE = 0.01;

/**
 * Where in a family lies one of the length asked: one of the places found, at random; null where there is none.
 * @param lengthAt NaN where the family has a gap
 */
export function ofLength(
  lengthAt: (t: number) => number,
  length: number,
  low: number,
  high: number,
  random: () => number,
): number | null {
  let count = 0;
  let before = low;
  let was = lengthAt(low) - length;
  for (let k = 1; k <= WALK; k++) {
    const t = low + (high - low) * (k / WALK) ** 1.5;
    const is = lengthAt(t) - length;
    if (is <= 0 !== was <= 0 && !Number.isNaN(is) && !Number.isNaN(was)) {
      brackets[4 * count] = before;
      brackets[4 * count + 1] = t;
      brackets[4 * count + 2] = was;
      brackets[4 * count++ + 3] = is;
    }
    before = t;
    was = is;
  }
  if (count === 0) return null;
  const one = 4 * Math.floor(random() * count);
  let a = brackets[one]!;
  let b = brackets[one + 1]!;
  let short = brackets[one + 2]!;
  let long = brackets[one + 3]!;
  // False position, with the weight of an end that stays halved (Illinois): a few steps are enough.
  let last = 0;
  for (let k = 0; k < NEARINGS; k++) {
    const t = b - (long * (b - a)) / (long - short);
    const off = lengthAt(t) - length;
    if (Math.abs(off) < CLOSE) return t;
    if (off <= 0 === short <= 0) {
      a = t;
      short = off;
      if (last === 1) long /= 2;
      last = 1;
    } else {
      b = t;
      long = off;
      if (last === -1) short /= 2;
      last = -1;
    }
    if (Number.isNaN(off)) return null;
  }
  // The length leaps past what is asked.
  return null;
}

/** Stretches of a family in which a length lies: both ends, and what is missing to it there. */
const brackets = new Float64Array(4 * WALK);

/** Centerline length of a shape by its corners, mm. */
export function lengthAlong(P: Float64Array, radii: readonly number[]): number {
  let length = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 1; 3 * i < P.length; i++) {
    const k = 3 * i;
    const dx = P[k]! - P[k - 3]!;
    const dy = P[k + 1]! - P[k - 2]!;
    const dz = P[k + 2]! - P[k - 1]!;
    const leg = Math.sqrt(dx * dx + dy * dy + dz * dz);
    length += leg;
    if (i > 1) {
      const cx = y * dz - z * dy;
      const cy = z * dx - x * dz;
      const cz = x * dy - y * dx;
      const turn = Math.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), x * dx + y * dy + z * dz);
      const R = radii[i - 2]!;
      length += R * turn - 2 * setback(R, turn);
    }
    x = dx;
    y = dy;
    z = dz;
  }
  return length;
}
