/**
 * A large mesh with few triangles, for seeking only. What is found beside it is settled again beside the mesh as it is. mm.
 */
import { countedSoup, type Meshes, placementOf, type TriangleSoup } from '../check/meshes';
import { isTree, type Obstacle } from '../check/obstacles';
import { flatTreeOf } from '../clearance/flatTrees';
import { placedTree } from '../clearance/placedTree';
import type { TriangleTree } from '../clearance/triangleTree';
import { thinSoup } from '../mesh/thinSoup';

/** Meshes with no more triangles are sought beside as they are. */
const FEW = 4000;
/** How far a place may move, mm: about what tubes keep clear anyway. */
const MOST = 10;

const kept = new WeakMap<TriangleSoup, { key: string; tree: TriangleTree }>();

/** The obstacles with their large meshes thinned; the very same list where there are none. */
export function thinned(obstacles: readonly Obstacle[], meshes: Meshes): readonly Obstacle[] {
  const isLarge = ({ surrounding, shape, original }: Obstacle): boolean =>
    !original && isTree(shape) && surrounding.shape === 'mesh' && shape.flat.soup.length > 9 * FEW;
  if (!obstacles.some(isLarge)) return obstacles;
  return obstacles.map((o) => (isLarge(o) ? { ...o, shape: thinTree(o, meshes) } : o));
}

function thinTree({ surrounding }: Obstacle, meshes: Meshes): TriangleTree {
  if (surrounding.shape !== 'mesh') throw new TypeError(`${surrounding.id} is no mesh`);
  const soup = countedSoup(surrounding, meshes.get(surrounding.file)!);
  const placement = placementOf(surrounding);
  const key = JSON.stringify(placement);
  const known = kept.get(soup);
  if (known?.key === key) return known.tree;
  const tree = placedTree(flatTreeOf(thinSoup(soup, MOST / (placement?.scale ?? 1))), placement);
  kept.set(soup, { key, tree });
  return tree;
}
