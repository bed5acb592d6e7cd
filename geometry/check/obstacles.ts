/** What stands around the header, ready to be measured against: for `check` and for the solver alike. */
import type { MeshSurrounding, Surrounding } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { boxShape, type ConvexShape, capsuleShape, cylinderShape, planeShape } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Header } from '../header/resolve';
import { type Meshes, treeOf } from './meshes';

export type Obstacle = { readonly surrounding: Surrounding; readonly shape: ConvexShape | TriangleTree };

export const isTree = (shape: Obstacle['shape']): shape is TriangleTree => 'visit' in shape;

const shapeOfCapsule = remembered(capsuleShape);
const shapeOfBox = remembered(boxShape);
const shapeOfCylinder = remembered(cylinderShape);
const shapeOfPlane = remembered(planeShape);

/** @returns with the mesh surroundings whose file is not among `meshes`: nobody may take them for measured */
export function obstaclesOf(header: Header, meshes: Meshes): { obstacles: Obstacle[]; missing: MeshSurrounding[] } {
  const obstacles: Obstacle[] = [];
  const missing: MeshSurrounding[] = [];
  for (const surrounding of header.surroundings) {
    if (surrounding.shape === 'capsule') obstacles.push({ surrounding, shape: shapeOfCapsule(surrounding) });
    else if (surrounding.shape === 'box') obstacles.push({ surrounding, shape: shapeOfBox(surrounding) });
    else if (surrounding.shape === 'cylinder') obstacles.push({ surrounding, shape: shapeOfCylinder(surrounding) });
    else if (surrounding.shape === 'plane') obstacles.push({ surrounding, shape: shapeOfPlane(surrounding) });
    else {
      const soup = meshes.get(surrounding.file);
      if (soup) obstacles.push({ surrounding, shape: treeOf(surrounding, soup) });
      else missing.push(surrounding);
    }
  }
  return { obstacles, missing };
}
