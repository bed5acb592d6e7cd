/** Mesh surroundings brought into the design's frame and millimetres, each with its search tree, built once. */
import type { MeshSurrounding } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { type TriangleTree, triangleTree } from '../clearance/triangleTree';
import { cross, reject, unit } from '../vector';

/** Triangles as nine numbers each (three corners), in the mesh file's own unit and pose. */
export type TriangleSoup = Float64Array;
/** By file name. */
export type Meshes = ReadonlyMap<string, TriangleSoup>;

const MM_IN = { mm: 1, cm: 10, m: 1000, in: 25.4 } as const;

/** The mesh as it stands in the engine bay: unit converted, pose applied. */
export function placeMesh(surrounding: MeshSurrounding, soup: TriangleSoup): TriangleSoup {
  const k = MM_IN[surrounding.unit ?? 'mm'];
  const { position = [0, 0, 0], x = [1, 0, 0], y = [0, 1, 0] } = surrounding.pose ?? {};
  const ex: Vec3 = unit(x);
  const ey: Vec3 = unit(reject(y, ex));
  const ez = cross(ex, ey);
  const placed = new Float64Array(soup.length);
  for (let i = 0; i < soup.length; i += 3)
    for (let axis = 0; axis < 3; axis++)
      placed[i + axis] =
        position[axis]! + k * (soup[i]! * ex[axis]! + soup[i + 1]! * ey[axis]! + soup[i + 2]! * ez[axis]!);
  return placed;
}

const trees = new WeakMap<TriangleSoup, { key: string; tree: TriangleTree }>();

/** Building a tree costs far more than a check; the same soup in the same pose keeps its tree. */
export function treeOf(surrounding: MeshSurrounding, soup: TriangleSoup): TriangleTree {
  const key = JSON.stringify([surrounding.unit, surrounding.pose]);
  const kept = trees.get(soup);
  if (kept?.key === key) return kept.tree;
  const tree = triangleTree(placeMesh(surrounding, soup));
  trees.set(soup, { key, tree });
  return tree;
}
