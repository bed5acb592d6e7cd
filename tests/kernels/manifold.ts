/**
 * A kernel of triangle meshes as an outside judge: booleans that always end in a closed mesh, and volumes. mm; corners come
 * in and out in single precision. Its solids live outside the garbage collector: `.delete()` them when done.
 */
import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d/manifold';
import { dot, type Mesh } from '../../geometry';
import type { CuttingPlane } from './occt';

export type { Manifold };

let loading: Promise<ManifoldToplevel> | undefined;
let kernel: ManifoldToplevel | undefined;

/** Once before anything else here. */
export async function loadManifold(): Promise<void> {
  loading ??= Module().then((module) => {
    module.setup();
    return module;
  });
  kernel = await loading;
}

function loaded(): ManifoldToplevel {
  if (!kernel) throw new Error('The mesh kernel is not loaded: await loadManifold() first.');
  return kernel;
}

/** @throws where the mesh is not a solid */
export function manifoldOfMesh({ positions, triangles }: Mesh): Manifold {
  const { Manifold: Solid, Mesh: Input } = loaded();
  const input = new Input({ numProp: 3, vertProperties: Float32Array.from(positions), triVerts: triangles });
  const solid = Solid.ofMesh(input);
  const status = solid.status();
  if (status !== 'NoError') throw new Error(`The mesh kernel refuses this mesh: ${status}.`);
  return solid;
}

export function meshOfManifold(solid: Manifold): Mesh {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  if (numProp !== 3) throw new Error('Corners with more than a place are not read.');
  return { positions: Float64Array.from(vertProperties), triangles: Uint32Array.from(triVerts) };
}

/** One solid from several; they stay. */
export function manifoldUnion(solids: readonly Manifold[]): Manifold {
  return loaded().Manifold.union(solids as Manifold[]);
}

/** What is left behind a plane whose normal points to what is taken away; the solid stays. */
export function manifoldTrim(solid: Manifold, { point, normal }: CuttingPlane): Manifold {
  const away: [number, number, number] = [-normal[0], -normal[1], -normal[2]];
  return solid.trimByPlane(away, dot(away, point) / Math.hypot(...away));
}
