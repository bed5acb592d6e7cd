/**
 * Where a picture is looked at from: parallel, a little from above. In the eye's frame x is to the right, y up, z toward the eye,
 * so that what has the larger z stands in front. mm.
 */
import { cross, dot, RADIANS } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

export type View = { readonly right: Vec3; readonly up: Vec3; readonly toward: Vec3 };

/** @param azimuth degrees from +X to +Y of the eye's place, @param elevation degrees above level */
export function viewFrom(azimuth: number, elevation: number): View {
  const [a, e] = [azimuth * RADIANS, elevation * RADIANS];
  const toward: Vec3 = [Math.cos(e) * Math.cos(a), Math.cos(e) * Math.sin(a), Math.sin(e)];
  const right: Vec3 = [-Math.sin(a), Math.cos(a), 0];
  return { right, up: cross(toward, right), toward };
}

export const seen = ({ right, up, toward }: View, p: Vec3): Vec3 => [dot(p, right), dot(p, up), dot(p, toward)];
