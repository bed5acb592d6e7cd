/** Lines of sight as the picture has them, for tests of drawing: through a pixel, or at a place. */

import type { Vec3 } from '../../../shared/vec3';
import type { Sight } from '../../../src/app/shape/pointer';
import { sightThrough } from '../../../src/app/viewport/camera/sight';
import { project, type View } from '../../../src/app/viewport/camera/view';

export const SIZE = { width: 1000, height: 800 };

/** From the front: X to the right, Z up, the eye on −Y. */
export const FRONT: View = { target: [0, 0, 0], yaw: -Math.PI / 2, pitch: 0, distance: 1200, parallel: false };
/** From above a corner, more from above than from any side. */
export const ABOVE: View = { target: [0, 0, 0], yaw: -Math.PI / 3, pitch: 0.95, distance: 1500, parallel: false };

export function sightAt(view: View, at: Vec3): { readonly sight: Sight; readonly px: readonly [number, number] } {
  const px = project(view, SIZE, at);
  if (!px) throw new RangeError('Behind the eye');
  return { sight: sightThrough(view, SIZE, px[0], px[1], at), px };
}
