/** What stands around the header, ready to be measured against: for `check` and for the solver alike. */
import type { MeshSurrounding, Surrounding } from '../../shared/design/types';
import { remembered } from '../../shared/remember';
import { boxShape, type ConvexShape, capsuleShape, cylinderShape, planeShape } from '../clearance/shapes';
import type { TriangleTree } from '../clearance/triangleTree';
import type { Header } from '../header/resolve';
import { type Meshes, treeOf } from './meshes';

export type Obstacle = {
  readonly surrounding: Surrounding;
  readonly shape: ConvexShape | TriangleTree;
  /** Of one that stands for another at a moment of the header's motion: that other one, and which moment, from 1. */
  readonly original?: Obstacle;
  readonly moment?: number;
};

/** What tells rows of the same thing at several moments apart. */
export const momentOf = ({ moment }: Obstacle): string => (moment === undefined ? '' : ` ${moment}`);

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
