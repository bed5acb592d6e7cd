/**
 * A large mesh with few triangles, for seeking only. What is found beside it is settled again beside the mesh as it is. mm.
 */
import { isTree, type Obstacle } from '../check/obstacles';
import type { FlatTree } from '../clearance/buildTree';
import { flatTreeOf } from '../clearance/flatTrees';
import { placedTree } from '../clearance/placedTree';
import type { TriangleTree } from '../clearance/triangleTree';
import { thinSoup } from '../mesh/thinSoup';

/** Meshes with no more triangles are sought beside as they are. */
const FEW = 4000;
/** How far a place may move, mm: about what tubes keep clear anyway. */
const MOST = 10;

const kept = new WeakMap<FlatTree, { within: number; flat: FlatTree }>();

const isLarge = ({ shape }: Obstacle): boolean => isTree(shape) && shape.flat.soup.length > 9 * FEW;

/** The obstacles with their large meshes thinned; the very same list where there are none. */
export function thinned(obstacles: readonly Obstacle[]): readonly Obstacle[] {
  if (!obstacles.some(isLarge)) return obstacles;
  return obstacles.map((o) => (isLarge(o) ? { ...o, shape: thinTree(o.shape as TriangleTree) } : o));
}

/** A mesh seen at many moments of a motion is thinned once: only its place differs, and its size by next to nothing. */
function thinTree({ flat, placement }: TriangleTree): TriangleTree {
  const within = MOST / (placement?.scale ?? 1);
  const known = kept.get(flat);
  if (known && Math.abs(known.within / within - 1) < ALIKE) return placedTree(known.flat, placement);
  const thin = flatTreeOf(thinSoup(flat.soup, within));
  kept.set(flat, { within, flat: thin });
  return placedTree(thin, placement);
}

/** Heat's growth is far less, another unit far more. */
const ALIKE = 0.1;
