/** Where a sensor's clock is 0: apart from its bung's place, as who mirrors a clock needs no collector. Unit vectors, design's frame. */
import type { Vec3 } from '../../shared/vec3';
import { norm, reject, unit } from '../vector';

const UP: Vec3 = [0, 0, 1];
const FORE: Vec3 = [0, 1, 0];
/** A tube that stands within this of upright has no uppermost side: about a degree. */
const UPRIGHT = 0.02;

/** Square to the flow, at the tube's uppermost side. */
export function uppermost(flow: Vec3): Vec3 {
  const up = reject(UP, flow);
  return unit(norm(up) > UPRIGHT ? up : reject(FORE, flow));
}
