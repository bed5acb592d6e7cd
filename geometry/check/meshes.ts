/**
 * Mesh surroundings as they count: cropped and thinned as the design says, standing where it says, each with its search tree.
 * A tree is built once for its triangles, in the file's own frame and unit; moving or turning a mesh builds nothing.
 */
import type { MeshSurrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { flatTreeOf } from '../clearance/flatTrees';
import { outOfMesh, placedTree } from '../clearance/placedTree';
import type { Placement, TriangleTree } from '../clearance/triangleTree';
import { cropSoup } from '../mesh/cropSoup';
import { MM_PER_UNIT, type TriangleSoup, unitOf } from '../mesh/soup';
import { thinSoup } from '../mesh/thinSoup';
import { cross, reject, scale, unit } from '../vector';

export type { Meshes, TriangleSoup } from '../mesh/soup';

/** How it stands in the design; null where it stands as it is, in mm. */
export function placementOf(surrounding: MeshSurrounding): Placement | null {
  const mm = MM_PER_UNIT[unitOf(surrounding)];
  const { position = [0, 0, 0], x = [1, 0, 0], y = [0, 1, 0] } = surrounding.pose ?? {};
  const ex: Vec3 = unit(x);
  const ey: Vec3 = unit(reject(y, ex));
  const isPlain = mm === 1 && [...position].every((p) => p === 0) && ex[0] === 1 && ey[1] === 1;
  return isPlain ? null : { scale: mm, position, x: ex, y: ey, z: cross(ex, ey) };
}

/** The triangles that count, in the file's frame and unit: the very same soup where it is neither cropped nor thinned. */
export function countedSoup(surrounding: MeshSurrounding, soup: TriangleSoup): TriangleSoup {
  const { crop, thin = 0 } = surrounding;
  if (!crop && !(thin > 0)) return soup;
  const mm = MM_PER_UNIT[unitOf(surrounding)];
  return kept(counted, soup, keyOf(surrounding), () => {
    const cropped = crop ? cropSoup(soup, scale(crop[0], 1 / mm), scale(crop[1], 1 / mm)) : soup;
    return thin > 0 ? thinSoup(cropped, thin / mm) : cropped;
  });
}

const keyOf = (surrounding: MeshSurrounding): string =>
  JSON.stringify([surrounding.crop, surrounding.thin ?? 0, MM_PER_UNIT[unitOf(surrounding)]]);

/** What counts of a soup, by what was asked, as worked out in another thread: nobody here works it out again. */
export const adoptCounted = (key: string, soup: TriangleSoup, own: TriangleSoup): void =>
  void kept(counted, soup, key, () => own);

/** All that is known of what counts of a soup, for another thread to adopt. */
export const knownCounted = (soup: TriangleSoup): readonly (readonly [key: string, own: TriangleSoup])[] =>
  (counted.get(soup) ?? []).map(({ key, made }) => [key, made]);

/** What `adoptCounted` knows it by; null where all of it counts. */
export const countedKey = (surrounding: MeshSurrounding): string | null =>
  surrounding.crop || (surrounding.thin ?? 0) > 0 ? keyOf(surrounding) : null;

/** The mesh as it stands in the engine bay, mm. Where it stands as it is, its own triangles: not to be written to. */
export function placeMesh(surrounding: MeshSurrounding, soup: TriangleSoup): TriangleSoup {
  const own = countedSoup(surrounding, soup);
  const placement = placementOf(surrounding);
  if (!placement) return own;
  const placed = new Float32Array(own.length);
  const p: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < own.length; i += 3) {
    outOfMesh(placement, own[i]!, own[i + 1]!, own[i + 2]!, p);
    placed[i] = p[0];
    placed[i + 1] = p[1];
    placed[i + 2] = p[2];
  }
  return placed;
}

/** The same tree for the same triangles in the same place: what was measured against it is remembered by it. */
export function treeOf(surrounding: MeshSurrounding, soup: TriangleSoup): TriangleTree {
  const own = countedSoup(surrounding, soup);
  const placement = placementOf(surrounding);
  return kept(trees, own, JSON.stringify(placement), () => placedTree(flatTreeOf(own), placement));
}

type Shelf<T> = WeakMap<TriangleSoup, { readonly key: string; readonly made: T }[]>;
const counted: Shelf<TriangleSoup> = new WeakMap();
const trees: Shelf<TriangleTree> = new WeakMap();

/** So many are kept of one soup, the latest asked for first: one file may stand in several places. */
const MOST_KEPT = 8;

function kept<T>(shelf: Shelf<T>, soup: TriangleSoup, key: string, make: () => T): T {
  const all = shelf.get(soup) ?? [];
  const i = all.findIndex((one) => one.key === key);
  const [found] = i < 0 ? [{ key, made: make() }] : all.splice(i, 1);
  all.unshift(found!);
  all.length = Math.min(all.length, MOST_KEPT);
  shelf.set(soup, all);
  return found!.made;
}
