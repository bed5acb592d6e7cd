/** Display meshes as three's geometries, and stretches of them that share the same buffers. */
import { BufferAttribute, BufferGeometry, Sphere, Vector3 } from 'three';
import { soupBox } from '../../../../geometry';

type Surface = {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly shades: Uint8Array;
  readonly indices: Uint16Array | Uint32Array;
};

export function surface(mesh: Surface): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
  geometry.setAttribute('color', new BufferAttribute(mesh.shades, 3, true));
  geometry.setIndex(new BufferAttribute(mesh.indices, 1));
  geometry.boundingSphere = ballRound(mesh.positions);
  return geometry;
}

/** About the middle of their box, found in one walk over plain numbers: culling and picking need no tighter one. */
function ballRound(points: Float32Array): Sphere {
  const [lx, ly, lz, hx, hy, hz] = soupBox(points);
  const middle = new Vector3((lx + hx) / 2, (ly + hy) / 2, (lz + hz) / 2);
  return new Sphere(middle, Math.hypot(hx - lx, hy - ly, hz - lz) / 2);
}

/** Some of the triangles of `whole`, without copying them. */
export function stretchOf(whole: BufferGeometry, first: number, count: number): BufferGeometry {
  const part = new BufferGeometry();
  for (const name of ['position', 'normal', 'color'])
    if (whole.hasAttribute(name)) part.setAttribute(name, whole.getAttribute(name));
  part.setIndex(whole.getIndex());
  part.setDrawRange(first, count);
  part.boundingSphere = whole.boundingSphere;
  return part;
}
