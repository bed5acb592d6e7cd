/**
 * Where a mesh passes through itself: any two of its triangles that cross, found by holding its box tree against itself.
 * A solid that does cannot be printed, cut or weighed rightly, though every edge of it is closed. mm.
 */
import type { Vec3 } from '../../shared/vec3';
import { buildOrdered, type FlatTree } from '../clearance/buildTree';
import type { Mesh } from '../solid/mesh';
import { LENGTH_TOLERANCE } from '../tolerance';
import { type Facets, trianglesCross } from './trianglesCross';

export type Crossing = {
  /** Their numbers in the mesh, the lower first. */
  readonly triangles: readonly [number, number];
  readonly at: Vec3;
};

/** What rounding may move two corners toward one another by, of their size: half the last digit each, along every axis. */
const ROUNDING = 2 ** -22;

/** A triangle thinner than so many tolerances is a line that its neighbours have too. */
const THIN = 4;

/** How near the mesh may come to itself and only touch: what rounding to single precision does to it. */
export function touching({ positions }: Mesh): number {
  let most = 0;
  for (const x of positions) most = Math.max(most, Math.abs(x));
  return Math.max(LENGTH_TOLERANCE, most * ROUNDING);
}

/** @param cap the search ends once it has found so many */
export function meshCrossings(mesh: Mesh, cap = 20): Crossing[] {
  const tolerance = touching(mesh);
  const { tree, order } = buildOrdered(soupOf(mesh));
  const { soup } = tree;
  const facets: Facets = { soup, normals: normalsOf(soup, tolerance) };
  const place = new Float64Array(3);
  const found: Crossing[] = [];
  eachMeeting(tree, (a, b) => {
    if (isThin(facets.normals, a) || isThin(facets.normals, b)) return true;
    if (!trianglesCross(facets, a, b, tolerance, place)) return true;
    const [one, other] = [order[a]!, order[b]!];
    found.push({
      triangles: [Math.min(one, other), Math.max(one, other)],
      at: [place[0]!, place[1]!, place[2]!],
    });
    return found.length < cap;
  });
  return found.sort((p, q) => p.triangles[0] - q.triangles[0] || p.triangles[1] - q.triangles[1]);
}

function soupOf({ positions, triangles }: Mesh): Float64Array {
  const soup = new Float64Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i++)
    for (let axis = 0; axis < 3; axis++) soup[3 * i + axis] = positions[3 * triangles[i]! + axis]!;
  return soup;
}

/** Unit normals; of triangles that are too thin, zeros. */
function normalsOf(soup: Float64Array, tolerance: number): Float64Array {
  const normals = new Float64Array(soup.length / 3);
  for (let o = 0, n = 0; o < soup.length; o += 9, n += 3) {
    const [ux, uy, uz] = [soup[o + 3]! - soup[o]!, soup[o + 4]! - soup[o + 1]!, soup[o + 5]! - soup[o + 2]!];
    const [vx, vy, vz] = [soup[o + 6]! - soup[o]!, soup[o + 7]! - soup[o + 1]!, soup[o + 8]! - soup[o + 2]!];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const twice = Math.sqrt(x * x + y * y + z * z);
    const longest = Math.max(
      ux * ux + uy * uy + uz * uz,
      vx * vx + vy * vy + vz * vz,
      (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2,
    );
    if (!(twice > THIN * tolerance * Math.sqrt(longest))) continue;
    normals[n] = x / twice;
    normals[n + 1] = y / twice;
    normals[n + 2] = z / twice;
  }
  return normals;
}

const isThin = (normals: Float64Array, t: number): boolean =>
  normals[3 * t] === 0 && normals[3 * t + 1] === 0 && normals[3 * t + 2] === 0;

/** Every two triangles whose boxes meet, once, by their places in the tree; until `see` says false. */
function eachMeeting(
  { bounds, link, count, soup, depth }: FlatTree<Float64Array>,
  see: (a: number, b: number) => boolean,
): void {
  if (link.length === 0) return;
  const boxes = boxesOf(soup);
  /** Pairs of nodes that wait: a pair that is opened leaves at most four. */
  const waiting = new Uint32Array(2 * (8 * depth + 8));
  let left = 0;
  const push = (a: number, b: number): void => {
    if (a !== b && !boxesMeet(bounds, 6 * a, 6 * b)) return;
    waiting[left++] = a;
    waiting[left++] = b;
  };
  push(0, 0);
  while (left > 0) {
    const b = waiting[--left]!;
    const a = waiting[--left]!;
    const [inA, inB] = [count[a]!, count[b]!];
    if (inA > 0 && inB > 0) {
      const [fromA, fromB] = [link[a]!, link[b]!];
      for (let i = fromA; i < fromA + inA; i++)
        for (let k = a === b ? i + 1 : fromB; k < fromB + inB; k++)
          if (boxesMeet(boxes, 6 * i, 6 * k) && !see(i, k)) return;
    } else if (a === b) {
      push(a + 1, a + 1);
      push(link[a]!, link[a]!);
      push(a + 1, link[a]!);
    } else if (inB > 0 || (inA === 0 && sizeOf(bounds, 6 * a) >= sizeOf(bounds, 6 * b))) {
      push(a + 1, b);
      push(link[a]!, b);
    } else {
      push(a, b + 1);
      push(a, link[b]!);
    }
  }
}

function boxesOf(soup: Float64Array): Float64Array {
  const boxes = new Float64Array((6 * soup.length) / 9);
  for (let o = 0, b = 0; o < soup.length; o += 9, b += 6)
    for (let axis = 0; axis < 3; axis++) {
      const [p, q, r] = [soup[o + axis]!, soup[o + 3 + axis]!, soup[o + 6 + axis]!];
      boxes[b + axis] = Math.min(p, q, r);
      boxes[b + 3 + axis] = Math.max(p, q, r);
    }
  return boxes;
}

const boxesMeet = (boxes: Float64Array, a: number, b: number): boolean =>
  boxes[a]! <= boxes[b + 3]! &&
  boxes[b]! <= boxes[a + 3]! &&
  boxes[a + 1]! <= boxes[b + 4]! &&
  boxes[b + 1]! <= boxes[a + 4]! &&
  boxes[a + 2]! <= boxes[b + 5]! &&
  boxes[b + 2]! <= boxes[a + 5]!;

const sizeOf = (boxes: Float64Array, a: number): number =>
  Math.max(boxes[a + 3]! - boxes[a]!, boxes[a + 4]! - boxes[a + 1]!, boxes[a + 5]! - boxes[a + 2]!);
