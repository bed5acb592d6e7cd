/** Display meshes as three's geometries, and stretches of them that share the same buffers. */
import { BufferAttribute, BufferGeometry } from 'three';

type Surface = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly shades: Uint8Array;
  readonly indices: Uint32Array;
};

export function surface(mesh: Surface): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  geometry.setAttribute('color', new BufferAttribute(mesh.shades, 3, true));
  geometry.setIndex(new BufferAttribute(mesh.indices, 1));
  geometry.computeBoundingSphere();
  return geometry;
}

/** Some of the triangles of `whole`, without copying them. */
export function stretchOf(whole: BufferGeometry, first: number, count: number): BufferGeometry {
  const part = new BufferGeometry();
  for (const name of ['position', 'normal', 'color']) part.setAttribute(name, whole.getAttribute(name));
  part.setIndex(whole.getIndex());
  part.setDrawRange(first, count);
  part.boundingSphere = whole.boundingSphere;
  return part;
}
