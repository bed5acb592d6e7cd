/**
 * Where a mesh comes near a frustum, patch by patch of its skin: for each patch the place of the mesh that is nearest or
 * reaches deepest in, so that a scan of millions of triangles is a handful of places. The frustum's signed distance is convex:
 * from one look at the middle of a box or a triangle its slope tells a bound over all of it, which leaves out most of the
 * hierarchy. mm outside, the mesh's own unit within the walk.
 */
import type { Vec3 } from '../../shared/vec3';
import type { Frustum } from '../header/merge';
import { anySquareTo, cross, dot } from '../vector';
import { type Minimum, minimumOnTriangle } from './convexMinimum';
import { FrustumField } from './frustumField';
import { intoMesh, outOfMesh } from './placedTree';
import type { Placement, TriangleTree } from './triangleTree';

/** Numbers of each place: the patch, the signed distance, the place, the distance's unit slope there. */
export const PLACE_NUMBERS = 8;

/** Places of a mesh near a frustum, in memory that is used again. */
export class SkinPlaces {
  count = 0;
  numbers = new Float64Array(PLACE_NUMBERS * 64);
}

export type Skin = {
  readonly frustum: Frustum;
  /** Places further along the axis than this are left out, mm; a tube's end has the tube going on there. */
  readonly until: number;
};

/** About how wide a patch is, mm. */
const PATCH = 16;
const LEAST_SECTORS = 8;
/** A box of no more than this half diagonal, mm, belongs to the patch that its middle is on. */
const SMALL = 5;
/** How far a place may be from the nearest of its patch, mm: beside the skin, and as a part of the gap away from it. */
const CLOSE = 2e-3;
const ROUGH = 0.1;
/** How far off the least of the whole skin may be, mm. */
const EXACT = 1e-6;
/** Of arithmetic, as a part of what stands in the mesh's frame. */
const ROUNDING = 1e-12;

const field = new FrustumField();
const own = new Float64Array(3);
/** Of each patch: distance and place, in the mesh's frame. */
let found = new Float64Array(4 * 256);
let waiting = new Uint32Array(64);
let bounds = new Float64Array(64);

/** What a walk knows, in the mesh's frame. */
const walk = {
  u: [1, 0, 0] as Vec3,
  v: [0, 1, 0] as Vec3,
  /** 0: all of the skin is one patch. */
  slabs: 1,
  sectors: 1,
  length: 0,
  until: 0,
  below: 0,
  small: 0,
  close: 0,
  rough: 0,
};

/** @param below places no nearer than this are left out */
export function placesNear({ frustum, until }: Skin, tree: TriangleTree, below: number, out: SkinPlaces): void {
  out.count = 0;
  if (tree.flat.link.length === 0) return;
  const scale = begin(frustum, tree.placement);
  const span = Math.min(frustum.length, until);
  walk.slabs = Math.max(1, Math.round(span / PATCH));
  const round = 2 * Math.PI * Math.max(frustum.startRadius, frustum.endRadius);
  walk.sectors = Math.max(LEAST_SECTORS, Math.round(round / PATCH));
  walk.length = span / scale;
  walk.until = until / scale;
  walk.below = below / scale;
  walk.small = SMALL / scale;
  walk.close = CLOSE / scale;
  walk.rough = ROUGH;
  const patches = (walk.slabs + 2) * walk.sectors;
  if (found.length < 4 * patches) found = new Float64Array(8 * patches);
  for (let k = 0; k < patches; k++) found[4 * k] = walk.below;
  search(tree);
  dropOverdemanding(frustum, scale);
  for (let k = 0; k < patches; k++) if (found[4 * k]! < walk.below) take(k, tree.placement, scale, out);
}

/** Where the mesh comes nearest to a frustum or reaches deepest in; null where it is not nearer than `below`. */
export function nearestToFrustum(frustum: Frustum, tree: TriangleTree, below: number): Minimum | null {
  if (tree.flat.link.length === 0) return null;
  const scale = begin(frustum, tree.placement);
  walk.slabs = 0;
  walk.until = Number.POSITIVE_INFINITY;
  walk.below = Math.min(below, Number.MAX_VALUE) / scale;
  walk.small = SMALL / scale;
  walk.close = EXACT / scale;
  walk.rough = 0;
  found[0] = walk.below;
  search(tree);
  if (found[0]! >= walk.below) return null;
  own.set(found.subarray(1, 4));
  if (tree.placement) outOfMesh(tree.placement, own[0]!, own[1]!, own[2]!, own);
  return { value: found[0]! * scale, at: [own[0]!, own[1]!, own[2]!] };
}

/** @returns the mesh's unit, mm */
function begin(frustum: Frustum, placement: Placement | null): number {
  const scale = placement?.scale ?? 1;
  let { position, axis } = frustum;
  if (placement) {
    intoMesh(placement, ...position, own);
    position = [own[0]!, own[1]!, own[2]!];
    axis = [dot(axis, placement.x), dot(axis, placement.y), dot(axis, placement.z)];
  }
  field.set(position, axis, frustum.length / scale, frustum.startRadius / scale, frustum.endRadius / scale);
  walk.u = anySquareTo(axis);
  walk.v = cross(axis, walk.u);
  return scale;
}

/** The patch beside which the place lies that `field` was asked about last. */
function patchOf(): number {
  const { u, v, slabs, sectors, length } = walk;
  const { h, rx, ry, rz } = field;
  const slab = h < 0 ? 0 : h > length ? slabs + 1 : 1 + Math.min(slabs - 1, Math.floor((h / length) * slabs));
  const angle = Math.atan2(rx * v[0] + ry * v[1] + rz * v[2], rx * u[0] + ry * u[1] + rz * u[2]);
  const sector = Math.min(sectors - 1, Math.floor((angle / (2 * Math.PI) + 0.5) * sectors));
  return slab * sectors + sector;
}

/** What is not under this is not worth looking at. */
const limitOf = (patch: number): number => {
  const least = found[4 * patch]!;
  return least - Math.max(walk.close, walk.rough * Math.abs(least));
};

/** The field's bound over a box; leaves what the field knows of its middle. */
function boundOver(of: Float32Array, n: number): number {
  const o = 6 * n;
  const x = 0.5 * (of[o]! + of[o + 3]!);
  const y = 0.5 * (of[o + 1]! + of[o + 4]!);
  const z = 0.5 * (of[o + 2]! + of[o + 5]!);
  const middle = field.at(x, y, z);
  const reach =
    Math.abs(field.gx) * (of[o + 3]! - x) +
    Math.abs(field.gy) * (of[o + 4]! - y) +
    Math.abs(field.gz) * (of[o + 5]! - z);
  return middle - reach - ROUNDING * (Math.abs(x) + Math.abs(y) + Math.abs(z));
}

function halfOf(of: Float32Array, o: number): number {
  const x = of[o + 3]! - of[o]!;
  const y = of[o + 4]! - of[o + 1]!;
  const z = of[o + 5]! - of[o + 2]!;
  return 0.5 * Math.sqrt(x * x + y * y + z * z);
}

function search({ flat }: TriangleTree): void {
  const { bounds: boxes, link, count, soup, depth } = flat;
  if (waiting.length < depth + 2) [waiting, bounds] = [new Uint32Array(2 * depth), new Float64Array(2 * depth)];
  let left = 0;
  waiting[left] = 0;
  bounds[left++] = boundOver(boxes, 0);
  while (left > 0) {
    const n = waiting[--left]!;
    if (bounds[left]! >= walk.below) continue;
    const half = halfOf(boxes, 6 * n);
    // Of one patch everything is a part from the start.
    let patch = walk.slabs === 0 ? 0 : -1;
    if (patch === 0) {
      if (bounds[left]! >= limitOf(0)) continue;
    } else if (half <= walk.small) {
      const o = 6 * n;
      field.at(
        0.5 * (boxes[o]! + boxes[o + 3]!),
        0.5 * (boxes[o + 1]! + boxes[o + 4]!),
        0.5 * (boxes[o + 2]! + boxes[o + 5]!),
      );
      if (field.h - half > walk.until) continue;
      patch = patchOf();
      if (bounds[left]! >= limitOf(patch)) continue;
    }
    const held = count[n]!;
    if (held > 0) {
      const first = link[n]!;
      for (let o = 9 * first; o < 9 * (first + held); o += 9)
        look(
          soup[o]!,
          soup[o + 1]!,
          soup[o + 2]!,
          soup[o + 3]!,
          soup[o + 4]!,
          soup[o + 5]!,
          soup[o + 6]!,
          soup[o + 7]!,
          soup[o + 8]!,
          patch,
          0,
        );
      continue;
    }
    const one = n + 1;
    const two = link[n]!;
    const toOne = boundOver(boxes, one);
    const toTwo = boundOver(boxes, two);
    const oneFirst = toOne <= toTwo;
    waiting[left] = oneFirst ? two : one;
    bounds[left++] = oneFirst ? toTwo : toOne;
    waiting[left] = oneFirst ? one : two;
    bounds[left++] = oneFirst ? toOne : toTwo;
  }
}

/**
 * Halvings of what is no larger than a patch after which sections search the rest: along an edge of the frustum, or a line of
 * it, halves never end, as everything there is nearly as near.
 */
const HALVINGS = 2;
/** Where a section of a part of a patch is narrow enough, as a part of it, and of all the skin. */
const NARROW = 1e-3;
const NARROWEST = 3e-6;

/**
 * A triangle, or a part of one: halved along its longest edge while it is larger than a patch, and then a few times while its
 * bound is under the least that is known.
 * @param patch where it belongs; −1 while it is too large for one
 */
function look(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
  patch: number,
  level: number,
): void {
  const mx = (ax + bx + cx) / 3;
  const my = (ay + by + cy) / 3;
  const mz = (az + bz + cz) / 3;
  const middle = field.at(mx, my, mz);
  const { gx, gy, gz, h } = field;
  const toA = gx * (ax - mx) + gy * (ay - my) + gz * (az - mz);
  const toB = gx * (bx - mx) + gy * (by - my) + gz * (bz - mz);
  const low = middle + Math.min(toA, toB, -toA - toB);
  if (low >= (patch < 0 ? walk.below : limitOf(patch))) return;
  const ab = (bx - ax) * (bx - ax) + (by - ay) * (by - ay) + (bz - az) * (bz - az);
  const bc = (cx - bx) * (cx - bx) + (cy - by) * (cy - by) + (cz - bz) * (cz - bz);
  const ca = (ax - cx) * (ax - cx) + (ay - cy) * (ay - cy) + (az - cz) * (az - cz);
  const longest = Math.max(ab, bc, ca);
  const isLarge = longest > 4 * walk.small * walk.small;
  let at = patch;
  if (at < 0 && !isLarge) {
    at = patchOf();
    if (low >= limitOf(at)) return;
  }
  if (at >= 0) {
    if (h <= walk.until) note(at, middle, mx, my, mz);
    const beyond = tryCorner(at, ax, ay, az) + tryCorner(at, bx, by, bz) + tryCorner(at, cx, cy, cz);
    if (beyond === 3 || low >= limitOf(at) || longest === 0) return;
    if (level === HALVINGS || isLarge) {
      // Where what counts ends, its last place need not be told: the tube goes on there, and is held by rows of its own.
      if (beyond > 0) return;
      const narrow = walk.slabs === 0 ? NARROWEST : NARROW;
      const { value, at: place } = minimumOnTriangle(distanceAt, [ax, ay, az], [bx, by, bz], [cx, cy, cz], narrow);
      note(at, value, ...place);
      return;
    }
  }
  const next = isLarge ? 0 : level + 1;
  if (longest === ab) {
    const [x, y, z] = [(ax + bx) / 2, (ay + by) / 2, (az + bz) / 2];
    look(ax, ay, az, x, y, z, cx, cy, cz, at, next);
    look(x, y, z, bx, by, bz, cx, cy, cz, at, next);
  } else if (longest === bc) {
    const [x, y, z] = [(bx + cx) / 2, (by + cy) / 2, (bz + cz) / 2];
    look(ax, ay, az, bx, by, bz, x, y, z, at, next);
    look(ax, ay, az, x, y, z, cx, cy, cz, at, next);
  } else {
    const [x, y, z] = [(ax + cx) / 2, (ay + cy) / 2, (az + cz) / 2];
    look(ax, ay, az, bx, by, bz, x, y, z, at, next);
    look(x, y, z, bx, by, bz, cx, cy, cz, at, next);
  }
}

const distanceAt = (x: number, y: number, z: number): number => field.at(x, y, z);

/** @returns 1 for a corner that does not count, being too far along the axis */
function tryCorner(patch: number, x: number, y: number, z: number): 0 | 1 {
  const value = field.at(x, y, z);
  if (field.h > walk.until) return 1;
  note(patch, value, x, y, z);
  return 0;
}

function note(patch: number, value: number, x: number, y: number, z: number): void {
  const o = 4 * patch;
  if (value >= found[o]!) return;
  found[o] = value;
  found[o + 1] = x;
  found[o + 2] = y;
  found[o + 3] = z;
}

/**
 * Where the mesh passes nearer to the axis than half the radius, straightened demands of places beside the deepest ask
 * for more than it does, toward sides of their own: of each ring of patches those are left out.
 */
function dropOverdemanding({ startRadius, endRadius }: Frustum, scale: number): void {
  const { slabs, sectors, below } = walk;
  for (let slab = 0; slab < slabs + 2; slab++) {
    const part = Math.min(1, Math.max(0, (slab - 0.5) / slabs));
    const radius = (startRadius + part * (endRadius - startRadius)) / scale;
    let deepest = -1;
    for (let k = slab * sectors; k < (slab + 1) * sectors; k++)
      if (deepest < 0 || found[4 * k]! < found[4 * deepest]!) deepest = k;
    const least = found[4 * deepest]!;
    if (least >= -radius / 2) continue;
    for (let k = slab * sectors; k < (slab + 1) * sectors; k++)
      if (k !== deepest && found[4 * k]! + least < -radius) found[4 * k] = below;
  }
}

/** A place that `found` holds, brought into the design's frame. On the axis, where the wall has no side, the way out is along it. */
function take(patch: number, placement: Placement | null, scale: number, out: SkinPlaces): void {
  const o = 4 * patch;
  const [x, y, z] = [found[o + 1]!, found[o + 2]!, found[o + 3]!];
  field.at(x, y, z);
  let { gx, gy, gz } = field;
  let steepness = Math.hypot(gx, gy, gz);
  if (steepness < 0.5) {
    [gx, gy, gz] = field.wayOut();
    steepness = 1;
  }
  if (placement) {
    const { x: ex, y: ey, z: ez } = placement;
    const [a, b, c] = [gx, gy, gz];
    gx = a * ex[0] + b * ey[0] + c * ez[0];
    gy = a * ex[1] + b * ey[1] + c * ez[1];
    gz = a * ex[2] + b * ey[2] + c * ez[2];
    outOfMesh(placement, x, y, z, own);
  } else {
    own[0] = x;
    own[1] = y;
    own[2] = z;
  }
  const at = PLACE_NUMBERS * out.count++;
  if (at === out.numbers.length) {
    const { numbers } = out;
    out.numbers = new Float64Array(2 * at);
    out.numbers.set(numbers);
  }
  const { numbers } = out;
  numbers[at] = patch;
  numbers[at + 1] = found[o]! * scale;
  numbers.set(own, at + 2);
  numbers[at + 5] = gx / steepness;
  numbers[at + 6] = gy / steepness;
  numbers[at + 7] = gz / steepness;
}
