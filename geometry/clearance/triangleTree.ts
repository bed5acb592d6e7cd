/**
 * A bounding-volume hierarchy over the triangles of a mesh surrounding, and the least gap of a tube to it. mm.
 * Distance is unsigned to the triangles themselves (a scan need not be closed); a tube whose centerline pierces one has
 * gap −radius.
 */
import type { Vec3 } from '../../shared/vec3';
import { LEAST_MESH_STEP } from '../tolerance';
import { cross, distance, norm, sub, unit } from '../vector';
import { type Chain, type Link, sagitta, vectorAt } from './chain';
import { type Field, minimumOnInterval } from './convexMinimum';
import { discToTriangle } from './discs';
import { GAP_RESOLUTION, type Gap, lesser } from './gap';
import { isLeast } from './tubeField';

type Node = {
  readonly low: Vec3;
  readonly high: Vec3;
  /** Leaf: triangle numbers. Branch: two children. */
  readonly triangles?: Uint32Array;
  readonly children?: readonly [Node, Node];
};

export type TriangleTree = {
  /** Calls `see` for each triangle whose box comes nearer to `p` than `limit()`, nearest boxes first. */
  visit(p: Vec3, limit: () => number, see: (a: Vec3, b: Vec3, c: Vec3) => void): void;
};

const LEAF = 4;

/** @param soup nine numbers a triangle, already in mm and in the design's frame */
export function triangleTree(soup: Float64Array): TriangleTree {
  const count = soup.length / 9;
  const root =
    count > 0
      ? build(
          soup,
          Uint32Array.from({ length: count }, (_, i) => i),
        )
      : null;
  return {
    visit(p, limit, see) {
      if (root) descend(root, soup, p, limit, see);
    },
  };
}

function build(soup: Float64Array, triangles: Uint32Array): Node {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const t of triangles)
    for (let k = 0; k < 9; k++) {
      const x = soup[9 * t + k]!;
      low[k % 3] = Math.min(low[k % 3]!, x);
      high[k % 3] = Math.max(high[k % 3]!, x);
    }
  if (triangles.length <= LEAF) return { low, high, triangles };
  const spans = [high[0] - low[0], high[1] - low[1], high[2] - low[2]];
  const axis = spans.indexOf(Math.max(...spans));
  const centre = (t: number): number => soup[9 * t + axis]! + soup[9 * t + 3 + axis]! + soup[9 * t + 6 + axis]!;
  const sorted = triangles.slice().sort((s, t) => centre(s) - centre(t));
  const half = sorted.length >> 1;
  return { low, high, children: [build(soup, sorted.slice(0, half)), build(soup, sorted.slice(half))] };
}

function boxDistance({ low, high }: Node, p: Vec3): number {
  let squared = 0;
  for (let k = 0; k < 3; k++) {
    const d = Math.max(low[k]! - p[k]!, 0, p[k]! - high[k]!);
    squared += d * d;
  }
  return Math.sqrt(squared);
}

function descend(
  node: Node,
  soup: Float64Array,
  p: Vec3,
  limit: () => number,
  see: (a: Vec3, b: Vec3, c: Vec3) => void,
): void {
  if (boxDistance(node, p) >= limit()) return;
  if (node.triangles) {
    for (const t of node.triangles) see(vectorAt(soup, 3 * t), vectorAt(soup, 3 * t + 1), vectorAt(soup, 3 * t + 2));
    return;
  }
  const [left, right] = node.children!;
  const [near, far] = boxDistance(left, p) <= boxDistance(right, p) ? [left, right] : [right, left];
  descend(near, soup, p, limit, see);
  descend(far, soup, p, limit, see);
}

/** Least gap of a tube, its flat ends included, to the mesh; null where nothing is nearer than `below`. */
export function tubeToMesh(tube: Chain, tree: TriangleTree, below = Number.POSITIVE_INFINITY): Gap | null {
  let best: Gap | null = null;
  const bound = (): number => best?.gap ?? below;
  for (const link of tube.links) searchLink(link, 0, link.count);
  for (const [i, disc] of tube.ends.entries()) {
    const link = i === 0 ? tube.links[0]! : tube.links.at(-1)!;
    const station = link.station + (i === 0 ? 0 : link.length);
    tree.visit(
      disc.centre,
      () => bound() + disc.radius,
      (a, b, c) => {
        const { value, at } = discToTriangle(disc, triangleField(a, b, c), a, b, c);
        if (value < bound()) best = lesser(best, { gap: value, at, station });
      },
    );
  }
  return best;

  function searchLink(link: Link, i: number, n: number): void {
    const [ax, ay, az] = vectorAt(link.points, i);
    const [bx, by, bz] = vectorAt(link.points, i + n);
    const middle: Vec3 = [(ax + bx) / 2, (ay + by) / 2, (az + bz) / 2];
    const half = Math.hypot(bx - ax, by - ay, bz - az) / 2;
    const stray = sagitta(link, n);
    let split = false;
    tree.visit(
      middle,
      () => bound() + tube.tubeRadius + half + stray,
      (a, b, c) => {
        if (split) return;
        const field = triangleField(a, b, c);
        const { value, t } = minimumOnInterval(
          (s) => field(ax + s * (bx - ax), ay + s * (by - ay), az + s * (bz - az)),
          0,
          1,
        );
        const gap = value - tube.tubeRadius;
        if (gap - stray >= bound() - GAP_RESOLUTION) return;
        if (n > 1) {
          split = true;
          return;
        }
        if (!isLeast(link, i + t, t, field)) return;
        const at: Vec3 = [ax + t * (bx - ax), ay + t * (by - ay), az + t * (bz - az)];
        best = { gap, at, station: link.station + (link.length * (i + t)) / link.count };
      },
    );
    if (!split) return;
    searchLink(link, i, n / 2);
    searchLink(link, i + n / 2, n / 2);
  }
}

/**
 * Distance to a triangle by its regions (Ericson, Real-Time Collision Detection, 5.1.5); convex in the point. One whose
 * corners lie on a line has no regions to speak of (and would divide by its area): it is its longest edge.
 */
export function triangleField(a: Vec3, b: Vec3, c: Vec3): Field {
  const [from, to] = longestEdge(a, b, c);
  const length = distance(from, to);
  if (norm(cross(sub(b, a), sub(c, a))) <= LEAST_MESH_STEP * length) return edgeField(from, to, length);
  const abx = b[0] - a[0],
    aby = b[1] - a[1],
    abz = b[2] - a[2];
  const acx = c[0] - a[0],
    acy = c[1] - a[1],
    acz = c[2] - a[2];
  return (x, y, z) => {
    const apx = x - a[0],
      apy = y - a[1],
      apz = z - a[2];
    const d1 = abx * apx + aby * apy + abz * apz;
    const d2 = acx * apx + acy * apy + acz * apz;
    if (d1 <= 0 && d2 <= 0) return Math.hypot(apx, apy, apz);
    const bpx = x - b[0],
      bpy = y - b[1],
      bpz = z - b[2];
    const d3 = abx * bpx + aby * bpy + abz * bpz;
    const d4 = acx * bpx + acy * bpy + acz * bpz;
    if (d3 >= 0 && d4 <= d3) return Math.hypot(bpx, bpy, bpz);
    const cpx = x - c[0],
      cpy = y - c[1],
      cpz = z - c[2];
    const d5 = abx * cpx + aby * cpy + abz * cpz;
    const d6 = acx * cpx + acy * cpy + acz * cpz;
    if (d6 >= 0 && d5 <= d6) return Math.hypot(cpx, cpy, cpz);
    const vc = d1 * d4 - d3 * d2;
    if (vc <= 0 && d1 >= 0 && d3 <= 0) return offEdge(apx, apy, apz, abx, aby, abz, d1 / (d1 - d3));
    const vb = d5 * d2 - d1 * d6;
    if (vb <= 0 && d2 >= 0 && d6 <= 0) return offEdge(apx, apy, apz, acx, acy, acz, d2 / (d2 - d6));
    const va = d3 * d6 - d5 * d4;
    if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0)
      return offEdge(bpx, bpy, bpz, acx - abx, acy - aby, acz - abz, (d4 - d3) / (d4 - d3 + d5 - d6));
    const whole = va + vb + vc;
    const v = vb / whole;
    const w = vc / whole;
    return Math.hypot(apx - v * abx - w * acx, apy - v * aby - w * acy, apz - v * abz - w * acz);
  };
}

const offEdge = (px: number, py: number, pz: number, ex: number, ey: number, ez: number, t: number): number =>
  Math.hypot(px - t * ex, py - t * ey, pz - t * ez);

function longestEdge(a: Vec3, b: Vec3, c: Vec3): readonly [Vec3, Vec3] {
  const [ab, bc, ca] = [distance(a, b), distance(b, c), distance(c, a)];
  if (ab >= bc && ab >= ca) return [a, b];
  return bc >= ca ? [b, c] : [c, a];
}

function edgeField(from: Vec3, to: Vec3, length: number): Field {
  const [ex, ey, ez] = unit(sub(to, from));
  return (x, y, z) => {
    const px = x - from[0];
    const py = y - from[1];
    const pz = z - from[2];
    const along = Math.min(length, Math.max(0, px * ex + py * ey + pz * ez));
    return offEdge(px, py, pz, ex, ey, ez, along);
  };
}
