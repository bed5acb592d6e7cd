/** The line of sight through a pixel: the inverse of `project`. mm, in the design's frame. */
import { addScaled, dot, scale, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Sight } from '../../shape/pointer';
import { eyeAxes, eyePosition, halfHeight, type View } from './view';

/** @param x @param y pixels from the top left corner @param at the place whose depth sets the scale */
export function sightThrough(
  view: View,
  size: { readonly width: number; readonly height: number },
  x: number,
  y: number,
  at: Vec3,
): Sight {
  const axes = eyeAxes(view);
  const half = size.height / 2;
  const [sx, sy] = [(x - size.width / 2) / half, -(y - half) / half];
  const depth = view.parallel ? view.distance : Math.max(1, view.distance - dot(sub(at, view.target), axes.back));
  const mmPerPx = halfHeight(depth) / half;
  if (view.parallel) {
    const reach = halfHeight(view.distance);
    const aside = addScaled(addScaled(view.target, axes.right, sx * reach), axes.up, sy * reach);
    return { ...axes, from: addScaled(aside, axes.back, view.distance), way: scale(axes.back, -1), mmPerPx };
  }
  const slope = halfHeight(1);
  const way = unit(addScaled(addScaled(scale(axes.back, -1), axes.right, sx * slope), axes.up, sy * slope));
  return { ...axes, from: eyePosition(view), way, mmPerPx };
}
