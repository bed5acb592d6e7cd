/**
 * How a tube lies by itself on a flat plate: of all the ways it rests, the one with its centre of mass lowest, so that a planar tube
 * lies flat. All directions are looked through: a triangle of them is left out once a plane through points of the tube shows
 * that none in it can be lower. Several as low: the way up that has the greatest z, then y, then x in the design's frame. mm
 */
import { addScaled, type Centerline, distance, dot, scale, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { type Lowest, lowestOf } from './lowest';
import { settle } from './settle';

/** Rests whose centres of mass are as near as this are as low: far below what a builder sees, far above rounding. */
const AS_LOW = 1e-4;
/** Triangles of directions are not divided below this, radians: the tube is let go there instead. */
const FINEST = 0.02;
/** Enough for any tube with a bend to speak of; one that is all but straight rests almost however it is rolled. */
const MOST_LET_GO = 60;
/** Two ways up nearer than this are one. */
const SAME_WAY = 1e-4;

export type Rest = { readonly up: Vec3; readonly tube: Lowest };

export function restOf(line: Centerline, radius: number): Rest {
  const tube = lowestOf(line, radius);
  const { segments, length } = line;
  // A straight tube lies on its side wherever it is rolled to, or, shorter than it is wide, stands.
  const only = segments.length === 1 ? segments[0]! : null;
  if (only && length / 2 >= radius - AS_LOW) return { up: sideways(only.direction), tube };
  return { up: lowestRest(tube), tube };
}

/** Square to an axis, with the greatest z there is; then y. */
function sideways(axis: Vec3): Vec3 {
  const toward = ([x, y, z]: Vec3): Vec3 => {
    const along = x * axis[0] + y * axis[1] + z * axis[2];
    return addScaled([x, y, z], axis, -along);
  };
  const up = toward([0, 0, 1]);
  return unit(dot(up, up) > SAME_WAY ** 2 ? up : toward([0, 1, 0]));
}

type Corner = { readonly up: Vec3; readonly low: Vec3 };
type Triangle = readonly [Corner, Corner, Corner];

/** Of any body with its centre of mass within it. */
export function lowestRest(tube: Lowest): Vec3 {
  const rests: { up: Vec3; height: number }[] = [];
  let least = Number.POSITIVE_INFINITY;
  let count = 0;
  const letGo = (from: Vec3): void => {
    if (++count > MOST_LET_GO) return;
    const up = settle(tube, from);
    const height = tube.height(up);
    least = Math.min(least, height);
    if (!rests.some((r) => distance(r.up, up) < SAME_WAY)) rests.push({ up, height });
  };
  const corner = (up: Vec3): Corner => ({ up, low: tube.at(up) });
  const open: Triangle[] = octants(corner);
  for (const [a, b, c] of open) letGo(middle(a, b, c));
  for (let triangle = open.pop(); triangle; triangle = open.pop()) {
    const [a, b, c] = triangle;
    const centre = corner(middle(a, b, c));
    if (leastIn(triangle, centre) > least + AS_LOW) continue;
    if (distance(a.up, b.up) > FINEST) {
      const [ab, bc, ca] = [
        [a, b],
        [b, c],
        [c, a],
      ].map(([p, q]) => corner(middle(p!, q!))) as [Corner, Corner, Corner];
      open.push([a, ab, ca], [ab, b, bc], [ca, bc, c], [ab, bc, ca]);
    } else if (!rests.some((r) => distance(r.up, centre.up) < FINEST && r.height <= least + AS_LOW)) letGo(centre.up);
  }
  const lowest = rests.filter(({ height }) => height <= least + AS_LOW).map(({ up }) => up);
  return lowest.reduce((a, b) => (isBefore(b, a) ? b : a));
}

const isBefore = (a: Vec3, b: Vec3): boolean => {
  for (const k of [2, 1, 0] as const) if (Math.abs(a[k] - b[k]) > SAME_WAY) return a[k] > b[k];
  return false;
};

/**
 * No height in the triangle is less: that of a plane through a point of the tube is, anywhere in it, at least the least at its
 * corners. A mean of points of the tube lies in its hull and serves as well.
 */
function leastIn([a, b, c]: Triangle, centre: Corner): number {
  const lows = [centre.low, a.low, b.low, c.low];
  const under = (low: Vec3): number => -Math.max(dot(low, a.up), dot(low, b.up), dot(low, c.up));
  let best = 0;
  for (const [i, low] of lows.entries()) {
    best = Math.max(best, under(low));
    for (let j = 0; j < i; j++) {
      const other = lows[j]!;
      best = Math.max(best, under([(low[0] + other[0]) / 2, (low[1] + other[1]) / 2, (low[2] + other[2]) / 2]));
    }
  }
  return best;
}

const middle = (...corners: readonly Corner[]): Vec3 =>
  unit(corners.reduce<Vec3>((sum, { up }) => addScaled(sum, up, 1), [0, 0, 0]));

function octants(corner: (up: Vec3) => Corner): Triangle[] {
  const axes: Vec3[] = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ];
  const ends = axes.map((axis) => [corner(axis), corner(scale(axis, -1))] as const);
  return [0, 1, 2, 3, 4, 5, 6, 7].map((k): Triangle => [ends[0]![k & 1]!, ends[1]![(k >> 1) & 1]!, ends[2]![k >> 2]!]);
}
