/** A round bar of a tool, a sensor, a bolt, as a geometry in place. mm. */
import { type BufferGeometry, CapsuleGeometry, CylinderGeometry, Quaternion, Vector3 } from 'three';
import type { ToolSolid } from '../../../../geometry';

const UP = new Vector3(0, 1, 0);

/** @param sides round the bar: 6 for a hexagon */
export function barGeometry({ shape, a, b, radius }: ToolSolid, sides = 28): BufferGeometry {
  const from = new Vector3(...a);
  const way = new Vector3(...b).sub(from);
  const long = way.length();
  const turn = long > 0 ? new Quaternion().setFromUnitVectors(UP, way.clone().divideScalar(long)) : new Quaternion();
  const made =
    shape === 'capsule'
      ? new CapsuleGeometry(radius, long, 8, sides)
      : new CylinderGeometry(radius, radius, long, sides);
  const middle = from.addScaledVector(way, 0.5);
  return made.applyQuaternion(turn).translate(middle.x, middle.y, middle.z);
}
