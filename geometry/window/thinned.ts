/**
 * A large mesh with few triangles, for seeking only: vertices in one cell of a grid become one, their mean, and triangles that
 * vanish thereby are left out (vertex clustering: Rossignac & Borrel, 1993). What is found beside it is settled again beside the
 * mesh as it is. mm.
 */
import { type Meshes, placeMesh, type TriangleSoup } from '../check/meshes';
import { isTree, type Obstacle } from '../check/obstacles';
import { type TriangleTree, triangleTree } from '../clearance/triangleTree';

/** Meshes with no more triangles are sought beside as they are. */
const FEW = 4000;
/** Edge of a cell, mm: about what tubes keep clear anyway. */
const CELL = 12;

const kept = new WeakMap<TriangleSoup, { key: string; tree: TriangleTree }>();

/** The obstacles with their large meshes thinned; the very same list where there are none. */
export function thinned(obstacles: readonly Obstacle[], meshes: Meshes): readonly Obstacle[] {
  const isLarge = ({ surrounding, shape, original }: Obstacle): boolean =>
    !original && isTree(shape) && surrounding.shape === 'mesh' && meshes.get(surrounding.file)!.length > 9 * FEW;
  if (!obstacles.some(isLarge)) return obstacles;
  return obstacles.map((o) => (isLarge(o) ? { ...o, shape: thinTree(o, meshes) } : o));
}

function thinTree({ surrounding }: Obstacle, meshes: Meshes): TriangleTree {
  if (surrounding.shape !== 'mesh') throw new TypeError(`${surrounding.id} is no mesh`);
  const soup = meshes.get(surrounding.file)!;
  const key = JSON.stringify([surrounding.unit, surrounding.pose]);
  const known = kept.get(soup);
  if (known?.key === key) return known.tree;
  const tree = triangleTree(clustered(placeMesh(surrounding, soup), CELL));
  kept.set(soup, { key, tree });
  return tree;
}

/** Cells along an axis, so that three numbers make one exact one: 1.5 km of them. Beyond, cells repeat. */
const CELLS = 2 ** 17;
const axis = (cells: number): number => (((Math.floor(cells) + CELLS / 2) % CELLS) + CELLS) % CELLS;

/** @param soup nine numbers a triangle */
export function clustered(soup: TriangleSoup, cell: number): TriangleSoup {
  const numbers = new Map<number, number>();
  const sums: number[] = [];
  const counts: number[] = [];
  const corners = new Uint32Array(soup.length / 3);
  for (let v = 0; v < corners.length; v++) {
    const [x, y, z] = [soup[3 * v]!, soup[3 * v + 1]!, soup[3 * v + 2]!];
    const key = (axis(x / cell) * CELLS + axis(y / cell)) * CELLS + axis(z / cell);
    let n = numbers.get(key);
    if (n === undefined) {
      n = counts.length;
      numbers.set(key, n);
      counts.push(0);
      sums.push(0, 0, 0);
    }
    corners[v] = n;
    counts[n] = counts[n]! + 1;
    sums[3 * n] = sums[3 * n]! + x;
    sums[3 * n + 1] = sums[3 * n + 1]! + y;
    sums[3 * n + 2] = sums[3 * n + 2]! + z;
  }
  const seen = new Set<string>();
  const found: number[] = [];
  for (let t = 0; t < corners.length; t += 3) {
    const own = [corners[t]!, corners[t + 1]!, corners[t + 2]!];
    if (own[0] === own[1] || own[1] === own[2] || own[2] === own[0]) continue;
    const key = [...own].sort((a, b) => a - b).join();
    if (seen.has(key)) continue;
    seen.add(key);
    for (const n of own) for (let k = 0; k < 3; k++) found.push(sums[3 * n + k]! / counts[n]!);
  }
  return Float64Array.from(found);
}
