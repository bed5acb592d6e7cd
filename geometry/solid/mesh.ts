/**
 * The one mesh everything speaks: indexed triangles, counter-clockwise seen from outside, mm in the design's frame.
 * Typed arrays, because the 3D view and the file writers take them as they are.
 */

export type Mesh = {
  /** x, y, z of each vertex. */
  readonly positions: Float64Array;
  /** Three vertex indices a triangle. */
  readonly triangles: Uint32Array;
};

export type Bounds = { readonly min: [number, number, number]; readonly max: [number, number, number] };

export const triangleCount = (mesh: Mesh): number => mesh.triangles.length / 3;

/** The vertices as a file in single precision holds them: what survives rounding is what the reader gets. */
export const roundedToFloat32 = (mesh: Mesh): Mesh => ({
  positions: Float64Array.from(mesh.positions, Math.fround),
  triangles: mesh.triangles,
});

/** Several meshes as one, each still its own shell: nothing is fused. */
export function joinMeshes(meshes: readonly Mesh[]): Mesh {
  const positions = new Float64Array(meshes.reduce((sum, m) => sum + m.positions.length, 0));
  const triangles = new Uint32Array(meshes.reduce((sum, m) => sum + m.triangles.length, 0));
  let at = 0;
  let corner = 0;
  for (const mesh of meshes) {
    positions.set(mesh.positions, at);
    const first = at / 3;
    for (const index of mesh.triangles) triangles[corner++] = first + index;
    at += mesh.positions.length;
  }
  return { positions, triangles };
}
