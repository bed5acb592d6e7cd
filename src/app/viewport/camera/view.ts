/**
 * Where the eye is: a target, two turntable angles and a distance, so that "up" stays up. Pure steps for orbit, pan and
 * zoom. mm and radians in the design's frame; screen points run −1 to 1, rightward and upward.
 */
import { addScaled, cross, dot, RADIANS, sub } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

export type View = {
  readonly target: Vec3;
  /** Turn of the eye about Z, from +X toward +Y. */
  readonly yaw: number;
  /** Height of the eye over the horizon, in [−π/2, π/2]. */
  readonly pitch: number;
  /** Eye to target. In parallel projection it still sets the scale, so that switching keeps the size. */
  readonly distance: number;
  readonly parallel: boolean;
};

export type EyeAxes = { readonly right: Vec3; readonly up: Vec3; readonly back: Vec3 };

/** Vertical angle of view: long enough that tubes near the edge stay round. */
export const ANGLE_OF_VIEW = 28 * RADIANS;
export const NEAREST = 15;
export const FARTHEST = 60_000;

export const clampPitch = (pitch: number) => Math.min(Math.PI / 2, Math.max(-Math.PI / 2, pitch));
const clampDistance = (d: number) => Math.min(FARTHEST, Math.max(NEAREST, d));

/** Unit vectors of the picture; `back` points from the target to the eye. */
export function eyeAxes({ yaw, pitch }: Pick<View, 'yaw' | 'pitch'>): EyeAxes {
  const [cy, sy, cp, sp] = [Math.cos(yaw), Math.sin(yaw), Math.cos(pitch), Math.sin(pitch)];
  const back: Vec3 = [cp * cy, cp * sy, sp];
  const right: Vec3 = [-sy, cy, 0];
  return { right, up: cross(back, right), back };
}

export const eyePosition = (view: View): Vec3 => addScaled(view.target, eyeAxes(view).back, view.distance);

/** Half the height of what is seen at the target's depth, mm. */
export const halfHeight = (distance: number) => distance * Math.tan(ANGLE_OF_VIEW / 2);

/** @param dx @param dy turn of the eye, radians: positive dx takes the scene to the right, positive dy takes it up */
export function orbit(view: View, dx: number, dy: number): View {
  return { ...view, yaw: view.yaw - dx, pitch: clampPitch(view.pitch - dy) };
}

/** Moves the scene by a screen step: [−1, 1] is the whole height. */
export function pan(view: View, dx: number, dy: number): View {
  const { right, up } = eyeAxes(view);
  const reach = halfHeight(view.distance);
  return { ...view, target: addScaled(addScaled(view.target, right, -dx * reach), up, -dy * reach) };
}

/**
 * Nearer for factors below 1, keeping whatever lies under the pointer where it is.
 * @param at the pointer, [−1, 1] in height units: x already times the aspect
 * @param under the depth to keep still; by default the target's
 */
export function zoom(view: View, factor: number, at: readonly [number, number] = [0, 0], under?: Vec3): View {
  const distance = clampDistance(view.distance * factor);
  const k = distance / view.distance;
  const axes = eyeAxes(view);
  // The target is first slid along the line of sight to the depth of what is pointed at: the picture does not change.
  const slide = under && !view.parallel ? dot(sub(under, view.target), axes.back) : 0;
  const depth = view.distance - slide;
  const stays = under && depth > NEAREST;
  const from = stays ? depth : view.distance;
  const base = stays ? addScaled(view.target, axes.back, slide) : view.target;
  const reach = halfHeight(from) * (1 - k);
  const target = addScaled(addScaled(base, axes.right, at[0] * reach), axes.up, at[1] * reach);
  return { ...view, target, distance: clampDistance(from * k) };
}

/** Part-way from one view to another, by the shorter turn; distances in proportion. */
export function between(a: View, b: View, t: number): View {
  const turn = Math.atan2(Math.sin(b.yaw - a.yaw), Math.cos(b.yaw - a.yaw));
  return {
    target: addScaled(a.target, sub(b.target, a.target), t),
    yaw: a.yaw + turn * t,
    pitch: a.pitch + (b.pitch - a.pitch) * t,
    distance: a.distance * (b.distance / a.distance) ** t,
    parallel: b.parallel,
  };
}

/**
 * Where a point of the design shows in the picture.
 * @param size of the picture in pixels
 * @returns pixels from the top left corner, or null behind the eye
 */
export function project(
  view: View,
  size: { readonly width: number; readonly height: number },
  at: Vec3,
): readonly [x: number, y: number] | null {
  const { right, up, back } = eyeAxes(view);
  const off = sub(at, view.target);
  const depth = view.parallel ? view.distance : view.distance - dot(off, back);
  if (depth < 1) return null;
  const perMm = size.height / 2 / halfHeight(depth);
  return [size.width / 2 + dot(off, right) * perMm, size.height / 2 - dot(off, up) * perMm];
}
