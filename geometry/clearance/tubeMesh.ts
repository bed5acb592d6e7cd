/**
 * The least gap of a tube to a mesh surrounding. mm. A tube whose centerline pierces a triangle has gap −radius; the mesh's
 * inside is nothing, since it need not have one. Made for scans of millions of triangles: places of the tube are asked for what
 * is nearest first, which is a bound that nothing wider need be measured under; stretches are halved until what can be nearer
 * is little, and of a triangle its tangent plane is looked at before it is measured.
 */
import type { Vec3 } from '../../shared/vec3';
import { anySquareTo, cross } from '../vector';
import { type Chain, type Link, sagitta } from './chain';
import { type Disc, leastAbout, minimumOnInterval } from './convexMinimum';
import { discToTriangle, pointToDisc } from './discs';
import { GAP_RESOLUTION, type Gap, lesser } from './gap';
import type { TriangleTree } from './triangleTree';
import { isLeast } from './tubeField';

/** Half the length of the stretches that are measured, mm. */
const SHORT = 3;
/** Places looked at first stand so far apart, mm. */
const LOOK_STEP = 8;
/** How far past a cut it is seen whether the field falls on, as a part of the piece; and what still counts as level, mm. */
const BEYOND = 2e-3;
const LEVEL = 1e-9;
/** Of an end's rim. */
const RIM_LOOKS = 12;

/** Least gap of a tube, its flat ends included, to the mesh; null where nothing is nearer than `below`. */
export function tubeToMesh(tube: Chain, tree: TriangleTree, below = Number.POSITIVE_INFINITY): Gap | null {
  const looked = firstLook(tube, tree, below);
  const found = looked < below ? search(tube, tree, looked) : null;
  return found ?? search(tube, tree, below);
}

/** A gap that the tube has no more than, from some of its places; or `below`, where they tell of none under it. */
function firstLook(tube: Chain, tree: TriangleTree, below: number): number {
  const { tubeRadius } = tube;
  // Places on the tube itself, where no radius is to be taken off.
  let onSkin = below;
  for (const disc of tube.ends) for (const p of rimPlaces(disc)) onSkin = Math.min(onSkin, tree.nearest(...p, onSkin));
  let least = onSkin + tubeRadius;
  const last = tube.links.at(-1)!;
  const [from, to] = [tube.links[0]!.station + 2 * tubeRadius, last.station + last.length - 2 * tubeRadius];
  for (const link of tube.links) {
    const steps = Math.max(1, Math.ceil(link.length / LOOK_STEP));
    for (let i = 0; i < steps; i++) {
      const part = (i + 0.5) / steps;
      const station = link.station + link.length * part;
      // Nearer to a flat end the ball about a place of the line sticks out of the tube.
      if (station < from || station > to) continue;
      const at = part * link.count;
      const k = Math.min(link.count - 1, Math.floor(at));
      const t = at - k;
      const P = link.points;
      const o = 3 * k;
      const x = P[o]! + t * (P[o + 3]! - P[o]!);
      const y = P[o + 1]! + t * (P[o + 4]! - P[o + 1]!);
      const z = P[o + 2]! + t * (P[o + 5]! - P[o + 2]!);
      const found = tree.nearest(x, y, z, least);
      if (found < least) least = found;
    }
  }
  return Math.min(below, Math.min(onSkin, least - tubeRadius) + 4 * GAP_RESOLUTION);
}

function search(tube: Chain, tree: TriangleTree, below: number): Gap | null {
  let best: Gap | null = null;
  const bound = (): number => best?.gap ?? below;
  for (const link of tube.links) searchLink(link, 0, link.count, 0, 1);
  for (const [i, disc] of tube.ends.entries()) {
    const link = i === 0 ? tube.links[0]! : tube.links.at(-1)!;
    const station = link.station + (i === 0 ? 0 : link.length);
    searchEnd(disc, station);
  }
  return best;

  /** @param n how many chords; where it is one, from `t0` to `t1` of it */
  function searchLink(link: Link, i: number, n: number, t0: number, t1: number): void {
    const P = link.points;
    const [o, p] = [3 * i, 3 * (i + n)];
    const [dx, dy, dz] = [P[p]! - P[o]!, P[p + 1]! - P[o + 1]!, P[p + 2]! - P[o + 2]!];
    const [ax, ay, az] = [P[o]! + t0 * dx, P[o + 1]! + t0 * dy, P[o + 2]! + t0 * dz];
    const part = t1 - t0;
    const length = part * Math.sqrt(dx * dx + dy * dy + dz * dz);
    const half = length / 2;
    const middle: Vec3 = [ax + (part / 2) * dx, ay + (part / 2) * dy, az + (part / 2) * dz];
    const stray = sagitta(link, n);
    const over = tube.tubeRadius + stray;
    const isLong = half > SHORT;
    if (isLong) {
      if (tree.nearest(...middle, bound() + over + half) === Number.POSITIVE_INFINITY) return;
      halve(link, i, n, t0, t1);
      return;
    }
    const steep = part / length;
    let split = false;
    tree.visit(
      middle,
      () => (split ? Number.NEGATIVE_INFINITY : bound() + over + half),
      (_a, _b, _c, field, _, on) => {
        const most = bound() - GAP_RESOLUTION + over;
        const [ux, uy, uz] = [middle[0] - on[0]!, middle[1] - on[1]!, middle[2] - on[2]!];
        // A convex field is nowhere under its tangent plane.
        const away = Math.sqrt(ux * ux + uy * uy + uz * uz);
        const along = (Math.abs(ux * dx + uy * dy + uz * dz) * steep) / away;
        if (away - along * half >= most) return;
        const onPiece = (s: number): number => field(ax + s * part * dx, ay + s * part * dy, az + s * part * dz);
        // Two looks tell whether it falls all the way to an end that counts for nothing, as what lies ahead of a flat end does.
        const ahead = ux * dx + uy * dy + uz * dz < 0;
        if (n === 1 && (ahead ? t1 < 1 || isEnd(link, i + 1) : t0 > 0 || isEnd(link, i))) {
          const [end, inward] = ahead ? [1, 1 - BEYOND] : [0, BEYOND];
          if (onPiece(end) < onPiece(inward) - LEVEL && fallsOn(onPiece, ahead ? 1 + BEYOND : -BEYOND, onPiece(end)))
            return;
        }
        const { value, t } = minimumOnInterval(onPiece, 0, 1);
        if (value >= most) return;
        // Where a chord was cut the field may fall on, to a least place that is another piece's, or the flat end's.
        if (t === 0 && t0 > 0 && onPiece(-BEYOND) < value - LEVEL) return;
        if (t === 1 && t1 < 1 && onPiece(1 + BEYOND) < value - LEVEL) return;
        if (n > 1) {
          split = true;
          return;
        }
        const onChord = t0 + t * part;
        if (!isLeast(link, i + onChord, onChord, field)) return;
        const at: Vec3 = [ax + t * part * dx, ay + t * part * dy, az + t * part * dz];
        const station = link.station + (link.length * (i + onChord)) / link.count;
        best = { gap: value - tube.tubeRadius, at, station };
      },
    );
    if (split) halve(link, i, n, t0, t1);
  }

  function halve(link: Link, i: number, n: number, t0: number, t1: number): void {
    if (n > 1) {
      searchLink(link, i, n / 2, 0, 1);
      searchLink(link, i + n / 2, n / 2, 0, 1);
      return;
    }
    const t = (t0 + t1) / 2;
    searchLink(link, i, 1, t0, t);
    searchLink(link, i, 1, t, t1);
  }

  function searchEnd(disc: Disc, station: number): void {
    const { centre, normal, radius } = disc;
    let near = bound();
    const reach = (): number => Math.min(near, bound());
    for (const p of rimPlaces(disc)) near = Math.min(near, tree.nearest(...p, near) + 2 * GAP_RESOLUTION);
    tree.visit(
      centre,
      () => reach() + radius,
      (a, b, c, field, _, on) => {
        const [ux, uy, uz] = [centre[0] - on[0]!, centre[1] - on[1]!, centre[2] - on[2]!];
        const away = Math.sqrt(ux * ux + uy * uy + uz * uz);
        const upright = (ux * normal[0] + uy * normal[1] + uz * normal[2]) / away;
        if (away - radius * Math.sqrt(Math.max(0, 1 - upright * upright)) >= reach()) return;
        if (leastAbout((x, y, z) => pointToDisc(disc, x, y, z), a, b, c) >= reach()) return;
        const { value, at } = discToTriangle(disc, field, a, b, c);
        if (value < bound()) best = lesser(best, { gap: value, at, station });
      },
    );
  }
}

/** Whether the stretch itself ends at a point of a link. */
const isEnd = (link: Link, k: number): boolean => (k === 0 && link.isFirst) || (k === link.count && link.isLast);

const fallsOn = (f: (t: number) => number, beyond: number, value: number): boolean => f(beyond) < value - LEVEL;

/** Some places of a flat end, all on its rim but one. */
function rimPlaces({ centre, normal, radius }: Disc): Vec3[] {
  const u = anySquareTo(normal);
  const v = cross(normal, u);
  const places: Vec3[] = [centre];
  for (let i = 0; i < RIM_LOOKS; i++) {
    const turn = (2 * Math.PI * i) / RIM_LOOKS;
    const [c, s] = [radius * Math.cos(turn), radius * Math.sin(turn)];
    places.push([centre[0] + c * u[0] + s * v[0], centre[1] + c * u[1] + s * v[1], centre[2] + c * u[2] + s * v[2]]);
  }
  return places;
}
