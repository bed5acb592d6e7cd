/**
 * What lies under the pointer. Solids come before surroundings, which are see-through: a runner behind a glassy box is
 * still the one that is meant. Objects that can be picked carry a `pick` in their userData.
 */
import { type Camera, DoubleSide, type Material, Mesh, type Object3D, Raycaster, Vector2 } from 'three';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ref } from '../../session';

export type Pickable = {
  /** @param corner the hit triangle's place in the index buffer */
  readonly ref: (corner: number) => Ref;
  readonly glass?: boolean;
};

export type Picked = { readonly ref: Ref; readonly at: Vec3 };

/** `normal` is a unit vector on either side of the surface. */
export type PickedSurface = Picked & { readonly normal: Vec3 };

const raycaster = new Raycaster();
const placeOf = (point: { toArray(): unknown }) => point.toArray() as Vec3;
const pickOf = (object: Object3D) => object.userData.pick as Pickable;

function aimed(scene: Object3D, camera: Camera, x: number, y: number): Object3D[] {
  const objects: Object3D[] = [];
  scene.traverseVisible((o) => {
    if (o.userData.pick) objects.push(o);
  });
  raycaster.setFromCamera(new Vector2(x, y), camera);
  return objects;
}

/** @param x @param y −1 to 1 across the picture @param isGone whether a place is cut away and cannot be hit */
export function pick(
  scene: Object3D,
  camera: Camera,
  x: number,
  y: number,
  isGone: (at: Vec3) => boolean = () => false,
): Picked | null {
  const objects = aimed(scene, camera, x, y);
  const hits = raycaster.intersectObjects(objects, false).filter((h) => !isGone(placeOf(h.point)));
  const hit = hits.find((h) => !pickOf(h.object).glass) ?? hits[0];
  if (!hit) return null;
  return { ref: pickOf(hit.object).ref((hit.faceIndex ?? 0) * 3), at: placeOf(hit.point) };
}

/** The first surface there is, glass or not, for something to be drawn on: its place and which way it looks. */
export function pickSurface(
  scene: Object3D,
  camera: Camera,
  x: number,
  y: number,
  isGone: (at: Vec3) => boolean = () => false,
): PickedSurface | null {
  const hits = aimed(scene, camera, x, y).flatMap((object) =>
    bothSided(object, () => raycaster.intersectObject(object, false)),
  );
  const [hit] = hits.filter((h) => !isGone(placeOf(h.point))).sort((a, b) => a.distance - b.distance);
  const normal = hit?.normal ?? hit?.face?.normal;
  if (!hit || !normal) return null;
  const { object, faceIndex, point } = hit;
  return {
    ref: pickOf(object).ref((faceIndex ?? 0) * 3),
    at: placeOf(point),
    normal: placeOf(normal.clone().transformDirection(object.matrixWorld)),
  };
}

/** Of a box of glass only the far walls are drawn, and met by a ray; what is drawn on is the near one. */
function bothSided<T>(object: Object3D, act: () => T): T {
  const material = object instanceof Mesh && !Array.isArray(object.material) ? (object.material as Material) : null;
  const side = material?.side;
  if (material) material.side = DoubleSide;
  try {
    return act();
  } finally {
    if (material && side !== undefined) material.side = side;
  }
}
