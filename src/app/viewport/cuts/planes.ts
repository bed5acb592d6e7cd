/** Where the picture is cut: planes square to the axes, from the session's cuts. mm, in the design's frame. */
import type { Vec3 } from '../../../../shared/vec3';
import { AXES, type Axis, type Cut } from '../../viewState';
import type { Ball } from '../camera/fit';
import { type Bounds, boundsOf } from '../model/content';

export type CutPlane = {
  readonly axis: 0 | 1 | 2;
  readonly at: number;
  /** Which side stays: −1 what lies below the plane, +1 what lies above. */
  readonly keep: 1 | -1;
};

export type Extent = Bounds;

export const extentOf = (balls: readonly Ball[]): Extent =>
  boundsOf(balls) ?? { low: [-100, -100, -100], high: [100, 100, 100] };

/** Where a cut is: as chosen, or through the middle of what is shown. */
export function cutAt(cut: Cut, axis: Axis, { low, high }: Extent): number {
  const i = AXES.indexOf(axis);
  return cut.at ?? Math.round((low[i]! + high[i]!) / 2);
}

const NO_CUTS: readonly CutPlane[] = [];

/** The very same while nothing is cut. */
export function cutPlanes(cuts: Readonly<Record<Axis, Cut>>, extent: Extent): readonly CutPlane[] {
  if (!AXES.some((axis) => cuts[axis].on)) return NO_CUTS;
  return AXES.flatMap((axis, i) => {
    const cut = cuts[axis];
    return cut.on ? [{ axis: i as 0 | 1 | 2, at: cutAt(cut, axis, extent), keep: cut.flip ? 1 : -1 }] : [];
  });
}

export const isCutAway = (planes: readonly CutPlane[], p: Vec3): boolean =>
  planes.some(({ axis, at, keep }) => (p[axis] - at) * keep < 0);
