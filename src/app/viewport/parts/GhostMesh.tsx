/**
 * A mesh that the header must keep clear of. Its triangles go to the graphics card once, as the file has them; unit and pose
 * are the object's own place, so that moving two million triangles moves one matrix.
 */
import { useMemo } from 'react';
import {
  BufferAttribute,
  BufferGeometry,
  type Intersection,
  Matrix4,
  Mesh,
  Quaternion,
  type Raycaster,
  type Side,
  Sphere,
  Vector3,
} from 'three';
import { knownTree, rayHit, type TriangleSoup } from '../../../../geometry';
import type { MeshSurrounding } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { boxOf, type Corners } from '../../meshes/facts';
import { lieOf } from '../../meshes/lie';
import { croppedGhost, facetedGhost } from '../gl/ghost';
import { useOwned } from '../gl/owned';
import { type GhostProps, Glass } from './Glass';

/** Beyond this many corners a scan has more edges than a drawing can bear, and finding them takes too long. */
const MOST_EDGED = 150_000;

function geometryOf(soup: TriangleSoup): BufferGeometry {
  const made = new BufferGeometry();
  made.setAttribute('position', new BufferAttribute(soup instanceof Float32Array ? soup : Float32Array.from(soup), 3));
  const [low, high] = boxOf(soup);
  const middle = new Vector3(...low).add(new Vector3(...high)).multiplyScalar(0.5);
  made.boundingSphere = new Sphere(middle, middle.distanceTo(new Vector3(...high)));
  return made;
}

export function GhostMesh(props: GhostProps<MeshSurrounding> & { readonly soup: TriangleSoup }) {
  const { surrounding, soup } = props;
  const { crop } = surrounding;
  const geometry = useOwned(() => geometryOf(soup), [soup]);
  const lie = useMemo(() => lieOf(surrounding), [surrounding]);
  const quaternion = useMemo(() => {
    const [x, y, z] = [lie.x, lie.y, lie.z].map((axis) => new Vector3(...axis)) as [Vector3, Vector3, Vector3];
    return new Quaternion().setFromRotationMatrix(new Matrix4().makeBasis(x, y, z));
  }, [lie]);
  const paint = useCropPaint(crop, lie.scale);
  const raycast = useMemo(() => raycastOf(soup, crop, lie.scale), [soup, crop, lie]);
  return (
    <group position={lie.position as [number, number, number]} quaternion={quaternion} scale={lie.scale}>
      <Glass
        {...props}
        geometry={geometry}
        halo={null}
        paint={paint ?? facetedGhost}
        raycast={raycast}
        open
        edged={!crop && soup.length / 3 <= MOST_EDGED}
      />
    </group>
  );
}

/** Beyond this many numbers not every triangle can be looked at whenever the pointer moves. */
const MOST_LOOKED_AT = 9 * 20_000;

/** What lies under the pointer, by the hierarchy that the mesh came with. */
function raycastOf(soup: TriangleSoup, crop: Corners | undefined, k: number) {
  return function (this: Mesh, raycaster: Raycaster, hits: Intersection[]): void {
    const tree = knownTree(soup);
    if (!tree) {
      if (soup.length <= MOST_LOOKED_AT) Mesh.prototype.raycast.call(this, raycaster, hits);
      return;
    }
    const ray = raycaster.ray.clone().applyMatrix4(this.matrixWorld.clone().invert());
    const counts = ([x, y, z]: Vec3): boolean => {
      if (!crop) return true;
      const [low, high] = crop;
      return [x, y, z].every((v, i) => k * v >= Math.min(low[i]!, high[i]!) && k * v <= Math.max(low[i]!, high[i]!));
    };
    const hit = rayHit(tree, ray.origin.toArray() as Vec3, ray.direction.toArray() as Vec3, counts);
    if (!hit) return;
    const point = new Vector3(...hit.at).applyMatrix4(this.matrixWorld);
    const distance = raycaster.ray.origin.distanceTo(point);
    if (distance >= raycaster.near && distance <= raycaster.far)
      hits.push({ distance, point, object: this, faceIndex: hit.triangle, normal: normalOf(tree.soup, hit.triangle) });
  };
}

/** Of a triangle, in the file's frame. */
function normalOf(soup: ArrayLike<number>, triangle: number): Vector3 {
  const [a, b, c] = [0, 3, 6].map((k) => new Vector3().fromArray(soup, 9 * triangle + k)) as [
    Vector3,
    Vector3,
    Vector3,
  ];
  return b.sub(a).cross(c.sub(a)).normalize();
}

/** A crop is in mm along the file's own axes, the triangles in the file's unit. */
function useCropPaint(crop: Corners | undefined, k: number) {
  const materials = useOwned(() => {
    const made = new Map<string, ReturnType<typeof croppedGhost>>();
    return { made, dispose: () => made.forEach((material) => void material.dispose()) };
  }, [crop, k]);
  return useMemo(() => {
    if (!crop) return null;
    const [a, b] = crop;
    const inUnit = [a.map((x, i) => Math.min(x, b[i]!) / k), a.map((x, i) => Math.max(x, b[i]!) / k)] as unknown as [
      [number, number, number],
      [number, number, number],
    ];
    return (...look: [string, number, number, Side]) => {
      const key = look.join(' ');
      const material = materials.made.get(key) ?? croppedGhost(...look, inUnit);
      materials.made.set(key, material);
      return material;
    };
  }, [crop, k, materials]);
}
