/** Display meshes as three's geometries, and stretches of them that share the same buffers. */
import { BufferAttribute, BufferGeometry, Sphere, Vector3 } from 'three';

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
  let [x0, y0, z0] = [Infinity, Infinity, Infinity];
  let [x1, y1, z1] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 3) {
    const x = points[i]!;
    const y = points[i + 1]!;
    const z = points[i + 2]!;
    if (x < x0) x0 = x;
    if (x > x1) x1 = x;
    if (y < y0) y0 = y;
    if (y > y1) y1 = y;
    if (z < z0) z0 = z;
    if (z > z1) z1 = z;
  }
  const middle = new Vector3((x0 + x1) / 2, (y0 + y1) / 2, (z0 + z1) / 2);
  return new Sphere(middle, Math.hypot(x1 - x0, y1 - y0, z1 - z0) / 2);
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
