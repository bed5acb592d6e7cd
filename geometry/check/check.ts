/** Measures every rule of the contract. */
import type { Design } from '../../shared/design/types';
import type { CheckReport } from './report';

/** Triangles as nine numbers each (three corners), in the mesh file's own unit and pose. */
export type TriangleSoup = Float64Array;
export type Meshes = ReadonlyMap<string, TriangleSoup>;

/** @param meshes by file name; a mesh surrounding whose file is absent here is reported as a `document` problem */
export function check(_design: Design, _meshes: Meshes = new Map()): CheckReport {
  throw new Error('not built yet');
}
