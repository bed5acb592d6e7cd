/**
 * What lies under the pointer. Solids come before surroundings, which are see-through: a runner behind a glassy box is
 * still the one that is meant. Objects that can be picked carry a `pick` in their userData.
 */
import { type Camera, type Object3D, Raycaster, Vector2 } from 'three';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ref } from '../../session';

export type Pickable = {
  /** @param corner the hit triangle's place in the index buffer */
  readonly ref: (corner: number) => Ref;
  readonly glass?: boolean;
};

export type Picked = { readonly ref: Ref; readonly at: Vec3 };

const raycaster = new Raycaster();

/** @param x @param y −1 to 1 across the picture @param isGone whether a place is cut away and cannot be hit */
export function pick(
  scene: Object3D,
  camera: Camera,
  x: number,
  y: number,
  isGone: (at: Vec3) => boolean = () => false,
): Picked | null {
  const objects: Object3D[] = [];
  scene.traverseVisible((o) => {
    if (o.userData.pick) objects.push(o);
  });
  raycaster.setFromCamera(new Vector2(x, y), camera);
  const placeOf = (point: { toArray(): unknown }) => point.toArray() as Vec3;
  const hits = raycaster.intersectObjects(objects, false).filter((h) => !isGone(placeOf(h.point)));
  const of = (object: Object3D) => object.userData.pick as Pickable;
  const hit = hits.find((h) => !of(h.object).glass) ?? hits[0];
  if (!hit) return null;
  return { ref: of(hit.object).ref((hit.faceIndex ?? 0) * 3), at: placeOf(hit.point) };
}
