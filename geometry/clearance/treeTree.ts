/**
 * The least distance of two meshes, each with its hierarchy wherever it stands: pairs of nodes, the nearer first, by boxes in the
 * design's frame. mm. Unsigned, as scans are sheets: 0 where they cross, and the place where they do.
 */
import type { Vec3 } from '../../shared/vec3';
import { outOfMesh } from './placedTree';
import { type Closest, closestOnSegments } from './segments';
import { squaredToTriangle } from './triangle';
import type { TriangleTree } from './triangleTree';

export type Apart = { readonly value: number; readonly from: Vec3; readonly to: Vec3 };

/** So many triangles of the one are asked for their nearest first, for a bound to begin with. */
const LOOKS = 64;

/** Null where one of them has no triangles. */
export function treeToTree(a: TriangleTree, b: TriangleTree): Apart | null {
  if (a.flat.link.length === 0 || b.flat.link.length === 0) return null;
  const P = new Float64Array(18);
  const [boxA, boxB] = [new Float64Array(6), new Float64Array(6)];
  const best = { squared: Number.POSITIVE_INFINITY, from: new Float64Array(3), to: new Float64Array(3) };
  look(a, b);
  const waiting: { na: number; nb: number; squared: number }[] = [];
  const push = (na: number, nb: number): void => {
    boxOf(a, na, boxA);
    boxOf(b, nb, boxB);
    const squared = betweenBoxes(boxA, boxB);
    if (squared < best.squared) waiting.push({ na, nb, squared });
  };
  const pushBoth = (pairs: readonly (readonly [number, number])[]): void => {
    const from = waiting.length;
    for (const [na, nb] of pairs) push(na, nb);
    if (waiting.length - from === 2 && waiting[from]!.squared < waiting[from + 1]!.squared)
      waiting.push(...waiting.splice(from, 1));
  };
  push(0, 0);
  for (let pair = waiting.pop(); pair; pair = waiting.pop()) {
    const { na, nb, squared } = pair;
    if (squared >= best.squared) continue;
    const [inA, inB] = [a.flat.count[na]!, b.flat.count[nb]!];
    if (inA > 0 && inB > 0) leaves(na, nb);
    else if (inB > 0 || (inA === 0 && sizeOf(a, na) >= sizeOf(b, nb)))
      pushBoth([
        [na + 1, nb],
        [a.flat.link[na]!, nb],
      ]);
    else
      pushBoth([
        [na, nb + 1],
        [na, b.flat.link[nb]!],
      ]);
  }
  return { value: Math.sqrt(best.squared), from: vec(best.from), to: vec(best.to) };

  function look(one: TriangleTree, other: TriangleTree): void {
    const total = other.flat.kinds.length;
    const place = new Float64Array(3);
    for (let i = 0; i < LOOKS; i++) {
      corners(other, Math.floor((total * i) / LOOKS), 9);
      const found = one.nearest(P[9]!, P[10]!, P[11]!, Math.sqrt(best.squared), place);
      if (found < Number.POSITIVE_INFINITY) take(found * found, place[0]!, place[1]!, place[2]!, P[9]!, P[10]!, P[11]!);
    }
  }

  function take(squared: number, x: number, y: number, z: number, u: number, v: number, w: number): void {
    if (squared >= best.squared) return;
    best.squared = squared;
    best.from.set([x, y, z]);
    best.to.set([u, v, w]);
  }

  function corners(tree: TriangleTree, t: number, o: number): void {
    const { flat, placement } = tree;
    for (let k = 0; k < 9; k += 3) {
      const i = 9 * t + k;
      if (placement)
        outOfMesh(placement, flat.soup[i]!, flat.soup[i + 1]!, flat.soup[i + 2]!, P.subarray(o + k, o + k + 3));
      else for (let n = 0; n < 3; n++) P[o + k + n] = flat.soup[i + n]!;
    }
  }

  function leaves(na: number, nb: number): void {
    const [fromA, fromB] = [a.flat.link[na]!, b.flat.link[nb]!];
    for (let s = fromA; s < fromA + a.flat.count[na]!; s++) {
      corners(a, s, 0);
      for (let t = fromB; t < fromB + b.flat.count[nb]!; t++) {
        corners(b, t, 9);
        pairOf(a.flat.kinds[s]!, b.flat.kinds[t]!);
      }
    }
  }

  /** The two triangles in `P`: corner to face both ways, edge to edge, and an edge through a face. */
  function pairOf(kindA: number, kindB: number): void {
    for (let k = 0; k < 9; k += 3) {
      const [x, y, z] = [P[k]!, P[k + 1]!, P[k + 2]!];
      take(squaredToTriangle(P, 9, kindB, x, y, z, spot), x, y, z, spot[0]!, spot[1]!, spot[2]!);
      const [u, v, w] = [P[9 + k]!, P[10 + k]!, P[11 + k]!];
      const squared = squaredToTriangle(P, 0, kindA, u, v, w, spot);
      take(squared, spot[0]!, spot[1]!, spot[2]!, u, v, w);
    }
    for (let i = 0; i < 3; i++) {
      const j = (i + 1) % 3;
      for (let k = 3; k < 6; k++) {
        const l = k === 5 ? 3 : k + 1;
        closestOnSegments(P, i, j, P, k, l, slot);
        if (slot.squared >= best.squared) continue;
        const on = (p: number, q: number, t: number, axis: number): number =>
          P[3 * p + axis]! + t * (P[3 * q + axis]! - P[3 * p + axis]!);
        const [s, t] = [slot.s, slot.t];
        take(
          slot.squared,
          on(i, j, s, 0),
          on(i, j, s, 1),
          on(i, j, s, 2),
          on(k, l, t, 0),
          on(k, l, t, 1),
          on(k, l, t, 2),
        );
      }
      pierce(3 * i, 3 * j, 9, kindB);
      pierce(9 + 3 * i, 9 + 3 * j, 0, kindA);
    }
  }

  /** Where the edge from `P[e]` to `P[f]` goes through the triangle at `o` (Möller & Trumbore, 1997). */
  function pierce(e: number, f: number, o: number, kind: number): void {
    if (kind !== 0) return;
    const [dx, dy, dz] = [P[f]! - P[e]!, P[f + 1]! - P[e + 1]!, P[f + 2]! - P[e + 2]!];
    const [ax, ay, az] = [P[o + 3]! - P[o]!, P[o + 4]! - P[o + 1]!, P[o + 5]! - P[o + 2]!];
    const [bx, by, bz] = [P[o + 6]! - P[o]!, P[o + 7]! - P[o + 1]!, P[o + 8]! - P[o + 2]!];
    const [px, py, pz] = [dy * bz - dz * by, dz * bx - dx * bz, dx * by - dy * bx];
    const whole = ax * px + ay * py + az * pz;
    if (whole === 0) return;
    const [tx, ty, tz] = [P[e]! - P[o]!, P[e + 1]! - P[o + 1]!, P[e + 2]! - P[o + 2]!];
    const u = (tx * px + ty * py + tz * pz) / whole;
    if (!(u >= 0 && u <= 1)) return;
    const [qx, qy, qz] = [ty * az - tz * ay, tz * ax - tx * az, tx * ay - ty * ax];
    const v = (dx * qx + dy * qy + dz * qz) / whole;
    const s = (bx * qx + by * qy + bz * qz) / whole;
    if (!(v >= 0 && u + v <= 1 && s >= 0 && s <= 1)) return;
    const [x, y, z] = [P[e]! + s * dx, P[e + 1]! + s * dy, P[e + 2]! + s * dz];
    take(0, x, y, z, x, y, z);
  }
}

const spot = new Float64Array(3);
const slot: Closest = { squared: 0, s: 0, t: 0 };
const vec = (v: Float64Array): Vec3 => [v[0]!, v[1]!, v[2]!];

/** A node's box about it in the design's frame. */
function boxOf({ flat, placement }: TriangleTree, n: number, into: Float64Array): void {
  const { bounds } = flat;
  const o = 6 * n;
  if (!placement) {
    for (let k = 0; k < 6; k++) into[k] = bounds[o + k]!;
    return;
  }
  const middle = [0, 1, 2].map((k) => (bounds[o + k]! + bounds[o + 3 + k]!) / 2) as [number, number, number];
  outOfMesh(placement, ...middle, spot);
  const { x, y, z, scale } = placement;
  for (let k = 0; k < 3; k++) {
    const half =
      (scale / 2) *
      (Math.abs(x[k]!) * (bounds[o + 3]! - bounds[o]!) +
        Math.abs(y[k]!) * (bounds[o + 4]! - bounds[o + 1]!) +
        Math.abs(z[k]!) * (bounds[o + 5]! - bounds[o + 2]!));
    into[k] = spot[k]! - half;
    into[3 + k] = spot[k]! + half;
  }
}

function betweenBoxes(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const off = Math.max(a[k]! - b[3 + k]!, b[k]! - a[3 + k]!, 0);
    sum += off * off;
  }
  return sum;
}

function sizeOf({ flat: { bounds }, placement }: TriangleTree, n: number): number {
  const o = 6 * n;
  const own = Math.max(bounds[o + 3]! - bounds[o]!, bounds[o + 4]! - bounds[o + 1]!, bounds[o + 5]! - bounds[o + 2]!);
  return own * (placement?.scale ?? 1);
}
