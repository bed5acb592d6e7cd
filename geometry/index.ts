/** The kernel's table of contents. Pure functions on plain data: no DOM, files, clock or randomness. */

// Rules
export { check } from './check/check';
export { boundsOf, type MeshReport, measureMesh, meshProblems } from './check/mesh';
export { type Meshes, placeMesh, type TriangleSoup } from './check/meshes';
export type { CheckReport, GroupReport, Margin, Problem, RuleName, RunnerReport } from './check/report';
export { type Bend, bends, isContinuous, straightIndices } from './curve/bends';
export { type BendRow, type BendTable, bendTable, fromBendTable } from './curve/bendTable';
// Curves: points and radii ⇄ straights and arcs; bend rows; frames
export { type Arc, type Centerline, centerline, type Segment, type Straight, setback } from './curve/centerline';
export { type Frame, frames } from './curve/frames';
export { arcCentre, chordCount, pointAt, pointOnSegment, type Station, sampleCenterline } from './curve/pointAt';
// The header: the design with its defaults and places worked out
export { type Frustum, type MergeGeometry, mergeAxes, mergeGeometry, type Pose } from './header/merge';
export {
  DEFAULT_MATERIAL,
  type Header,
  type ResolvedMerge,
  type ResolvedPort,
  type ResolvedRunner,
  radiiOf,
  resolveHeader,
} from './header/resolve';
// Layout
export { type BalanceResult, balance } from './layout/balance';
export { frustumSolid } from './solid/frustum';

// Solids: closed meshes, and what makes one sound
export { type Bounds, joinMeshes, type Mesh, roundedToFloat32, triangleCount } from './solid/mesh';
export {
  DEFAULT_CHORD_ERROR,
  type TubeShape,
  tubeMeshVolume,
  tubeObstacle,
  tubeSolid,
  tubeVolume,
  tubeVolumeDeficit,
  wallArea,
} from './solid/tube';
export * from './tolerance';
// Vectors, tolerances
export * from './vector';
