/**
 * The least gap of a tube to a mesh surrounding. mm. A tube whose centerline pierces a triangle has gap −radius; the mesh's
 * inside is nothing, since it need not have one. Well away from the flat ends the tube is where balls along its centerline
 * are, and distances of points tell all (`emptyBalls`); by the ends each triangle is measured, which takes far longer.
 */
import type { Vec3 } from '../../shared/vec3';
import { norm, scale } from '../vector';
import { BOTH_ENDS, type Chain, type Link, sagitta, vectorAt } from './chain';
import { minimumOnInterval } from './convexMinimum';
import { TOUCHING } from './discs';
import { discToTriangle } from './discTriangle';
import { type Curve, leastToMesh } from './emptyBalls';
import type { SeeNear } from './fieldWalk';
import { GAP_RESOLUTION, type Gap } from './gap';
import { type Rising, risingFromDisc, risingFromFrustum, risingFromSegment } from './rising';
import type { TriangleTree } from './triangleTree';
import { isLeast } from './tubeField';

/** So many tube radii from an end no ball about the centerline comes out of it, whatever bend stands there. */
const CLEAR_OF_END = 1.5;

/**
 * Least gap of a tube to the mesh; null where nothing is nearer than `below`.
 * @param flatEnds which of its ends are measured: a stretch that goes on has none there
 */
export function tubeToMesh(
  tube: Chain,
  tree: TriangleTree,
  below = Number.POSITIVE_INFINITY,
  flatEnds = BOTH_ENDS,
): Gap | null {
  const { tubeRadius } = tube;
  const length = lengthOf(tube);
  const start = tube.links[0]!.station;
  const isShort = 2 * CLEAR_OF_END * tubeRadius >= length;
  const clear = isShort ? length : CLEAR_OF_END * tubeRadius;
  let best: Gap | null = null;
  const bound = (): number => best?.gap ?? below;
  const whole = isShort ? [] : middleOf(tube, start + clear, start + length - clear);
  const middle = leastToMesh(whole, tree, below + tubeRadius);
  if (middle && middle.distance - tubeRadius < below)
    best = { gap: middle.distance - tubeRadius, at: middle.at, station: middle.station };
  for (const i of flatEnds) {
    const disc = tube.ends[i];
    const link = i === 0 ? tube.links[0]! : tube.links.at(-1)!;
    const station = link.station + (i === 0 ? 0 : link.length);
    // Where the end is cut already, what else cuts it may still reach in deeper.
    const rising = risingFromDisc(disc);
    tree.visitWhere(
      rising,
      () => Math.max(bound(), 2 * TOUCHING),
      (a, b, c, field) => {
        const near = discToTriangle(disc, rising, field, a, b, c, bound());
        if (near) best = { gap: near.value, at: near.at, station };
      },
    );
  }
  sidesOf(start, start + clear);
  if (!isShort) sidesOf(start + length - clear, start + length);
  return best;

  /** Balls about the centerline come out of a flat end, so that they tell only where surely nothing is. */
  function sidesOf(from: number, to: number): void {
    if (leastToMesh(middleOf(tube, from, to), tree, bound() + tubeRadius))
      for (const link of tube.links) sideOf(link, from, to);
  }

  /** By triangles, what of the link lies between two stations. */
  function sideOf(link: Link, from: number, to: number): void {
    const first = Math.max(0, ((from - link.station) / link.length) * link.count);
    const last = Math.min(link.count, ((to - link.station) / link.length) * link.count);
    if (!(last > first)) return;
    if (link.radius === 0) byTriangles(link, first, last);
    else {
      const step = Math.max(1, Math.min(link.count, Math.floor((ARC_PIECE * link.count) / link.length)));
      for (let i = Math.floor(first); i < Math.ceil(last); i += step)
        halves(link, i, Math.min(step, Math.ceil(last) - i));
    }
  }

  function halves(link: Link, i: number, n: number): void {
    if (!byTriangles(link, i, i + n) || n === 1) return;
    const half = n >> 1;
    halves(link, i, half);
    halves(link, i + half, n - half);
  }

  /** @returns whether the curve must be looked at more finely */
  function byTriangles(link: Link, from: number, to: number): boolean {
    const p = placeOn(link, from);
    const q = placeOn(link, to);
    const [dx, dy, dz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
    const squared = dx * dx + dy * dy + dz * dz;
    const stray = link.radius === 0 ? 0 : sagitta(link, to - from);
    const isWhole = link.radius === 0 || to - from <= 1;
    const opens = link.isFirst && from === 0;
    const closes = link.isLast && to === link.count;
    let split = false;
    const see: SeeNear = (a, b, c, field) => {
      const along = (v: Vec3): number => (v[0] - p[0]) * dx + (v[1] - p[1]) * dy + (v[2] - p[2]) * dz;
      // What lies past the flat end is for the end's disc to tell.
      if (opens && stray === 0 && along(a) <= 0 && along(b) <= 0 && along(c) <= 0) return;
      if (closes && stray === 0 && along(a) >= squared && along(b) >= squared && along(c) >= squared) return;
      const found = minimumOnInterval((s) => field(p[0] + s * dx, p[1] + s * dy, p[2] + s * dz), 0, 1);
      const gap = found.value - tubeRadius;
      if (gap - stray >= bound() - GAP_RESOLUTION) return;
      if (!isWhole) {
        split = true;
        return;
      }
      const k = from + found.t * (to - from);
      const isInside = found.t > 0 && found.t < 1;
      if (!isInside && !isLeast(link, k, k - Math.floor(k), field)) return;
      const at: Vec3 = [p[0] + found.t * dx, p[1] + found.t * dy, p[2] + found.t * dz];
      best = { gap, at, station: link.station + (link.length * k) / link.count };
    };
    const isBar = stray === 0 && squared > 0;
    // A straight piece ends flat: about its axis alone all that lies before an end would seem near.
    if (isBar) tree.visitWhere(bar(p, [dx, dy, dz], tubeRadius), () => (bound() > 0 ? bound() : STOP), see);
    // Once it overlaps, it is the axis that tells how deep.
    if (!isBar || bound() <= 0)
      tree.visitWhere(risingFromSegment(p, [dx, dy, dz]), () => (split ? STOP : bound() + tubeRadius + stray), see);
    return split;
  }
}

/** What a visit ends by. */
const STOP = Number.NEGATIVE_INFINITY;

function bar(position: Vec3, d: Vec3, radius: number): Rising {
  const length = norm(d);
  return risingFromFrustum({ position, axis: scale(d, 1 / length), length, startRadius: radius, endRadius: radius });
}

/** A stretch of an arc that is looked at as a whole first, mm. */
const ARC_PIECE = 12;

const lengthOf = ({ links }: Chain): number => links.at(-1)!.station + links.at(-1)!.length - links[0]!.station;

function placeOn(link: Link, k: number): Vec3 {
  const i = Math.min(link.count - 1, Math.floor(k));
  const t = k - i;
  const a = vectorAt(link.points, i);
  if (t === 0) return a;
  const b = vectorAt(link.points, i + 1);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
}

function middleOf({ links }: Chain, from: number, to: number): Curve[] {
  return links.flatMap((link): Curve[] => {
    const curve: Curve = {
      from: Math.max(from, link.station),
      to: Math.min(to, link.station + link.length),
      radius: link.radius,
      place: (station, into) => writeOn(link, ((station - link.station) / link.length) * link.count, into),
    };
    return curve.to >= curve.from ? [curve] : [];
  });
}

/** As `placeOn`, without garbage. */
function writeOn({ points, count }: Link, k: number, into: Float64Array): void {
  const i = Math.max(0, Math.min(count - 1, Math.floor(k)));
  const t = k - i;
  for (let axis = 0; axis < 3; axis++) {
    const a = points[3 * i + axis]!;
    into[axis] = a + t * (points[3 * i + 3 + axis]! - a);
  }
}
