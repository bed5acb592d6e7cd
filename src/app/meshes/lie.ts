/** How a mesh file lies in the design: its unit, place and axes, and places taken there and back. mm, the design's frame. */
import { add, dot, type Placement, placementOf, scale, sub } from '../../../geometry';
import type { MeshSurrounding } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import type { Corners } from './facts';

export type Lie = Placement;

const AS_IT_IS: Lie = { scale: 1, position: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

export const lieOf = (mesh: MeshSurrounding): Lie => placementOf(mesh) ?? AS_IT_IS;

/** @param p in the file's own unit and frame */
export const placed = ({ scale: k, position, x, y, z }: Lie, p: Vec3): Vec3 =>
  add(position, add(add(scale(x, k * p[0]), scale(y, k * p[1])), scale(z, k * p[2])));

/** Back into the file. */
export function inFile({ scale: k, position, x, y, z }: Lie, p: Vec3): Vec3 {
  const off = sub(p, position);
  return [dot(off, x) / k, dot(off, y) / k, dot(off, z) / k];
}

/** The middle of a box that lies in the file. */
export const placedMiddle = (lie: Lie, [low, high]: Corners): Vec3 => placed(lie, scale(add(low, high), 0.5));

/** How low the box reaches in the design. */
export function lowestOf(lie: Lie, [low, high]: Corners): number {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (n): Vec3 => [(n & 1 ? high : low)[0], (n & 2 ? high : low)[1], (n & 4 ? high : low)[2]],
  );
  return Math.min(...corners.map((corner) => placed(lie, corner)[2]));
}
