/** Where a plate lies: its outer face through the first port's middle, square to its ports' mean direction. mm. */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import type { ResolvedPort } from '../header/resolve';
import { type PartFrame, partFrame } from '../parts/place';
import type { Disc } from '../plane/discs';
import type { Point2 } from '../plane/loop';
import { LENGTH_TOLERANCE } from '../tolerance';
import { add, anySquareTo, cross, dot, norm, reject, sub, unit } from '../vector';

export type PlateFrame = { readonly pose: Pose; readonly axes: PartFrame };

export function plateFrame(ports: readonly ResolvedPort[]): PlateFrame {
  const direction = unit(ports.map((p) => p.pose.direction).reduce(add));
  const mean = reject(ports.map((p) => p.pose.up).reduce(add), direction);
  // Ups that cancel out say nothing: then the first port's, or any.
  const ups = [mean, reject(ports[0]!.pose.up, direction), anySquareTo(direction)];
  const up = unit(ups.find((v) => norm(v) > LENGTH_TOLERANCE)!);
  const pose: Pose = { position: ports[0]!.pose.position, direction, up };
  return { pose, axes: partFrame(pose) };
}

/** Slid onto the face along its normal. */
export const onPlate = ({ axes: [x, y, , origin] }: PlateFrame, p: Vec3): Point2 => {
  const off = sub(p, origin);
  return [dot(off, x), dot(off, y)];
};

/** How far off the face, outward. */
export const offPlate = ({ axes: [, , z, origin] }: PlateFrame, p: Vec3): number => dot(sub(p, origin), z);

/** From a port's own across and up onto the plate. The opening keeps its size: it is cut square to the plate. */
export function turnedOnPlate(frame: PlateFrame, port: Pose, discs: readonly Disc[]): Disc[] {
  const [x, y] = frame.axes;
  const across = cross(port.up, port.direction);
  const angle = Math.atan2(dot(across, y), dot(across, x));
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [px, py] = onPlate(frame, port.position);
  return discs.map((d) => ({ x: px + c * d.x - s * d.y, y: py + s * d.x + c * d.y, r: d.r }));
}
