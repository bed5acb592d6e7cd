/** From a part's own frame into the design's: z along the pose's direction, y along its up, x = up × direction. mm. */
import type { Vec3 } from '../../shared/vec3';
import type { Pose } from '../header/merge';
import type { Mesh } from '../solid/mesh';
import { cross, dot, sub } from '../vector';

/** Column by column: x, y, z axes, then the origin. */
export type PartFrame = readonly [x: Vec3, y: Vec3, z: Vec3, origin: Vec3];

export const partFrame = ({ position, direction, up }: Pose): PartFrame => [
  cross(up, direction),
  up,
  direction,
  position,
];

export const fromFrame = ([x, y, z, o]: PartFrame, [a, b, c]: Vec3): Vec3 => [
  o[0] + a * x[0] + b * y[0] + c * z[0],
  o[1] + a * x[1] + b * y[1] + c * z[1],
  o[2] + a * x[2] + b * y[2] + c * z[2],
];

/** A place of the design seen from the frame. */
export function toFrame([x, y, z, o]: PartFrame, p: Vec3): Vec3 {
  const off = sub(p, o);
  return [dot(off, x), dot(off, y), dot(off, z)];
}

/** Points by threes. */
export function placePoints(points: ArrayLike<number>, pose: Pose): Float64Array {
  const frame = partFrame(pose);
  const placed = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3)
    placed.set(fromFrame(frame, [points[i]!, points[i + 1]!, points[i + 2]!]), i);
  return placed;
}

export const placedMesh = ({ mesh, pose }: { readonly mesh: Mesh; readonly pose: Pose }): Mesh => ({
  positions: placePoints(mesh.positions, pose),
  triangles: mesh.triangles,
});

/** A mesh of the design's frame, seen from a part's own. */
export function fromMesh({ positions, triangles }: Mesh, pose: Pose): Mesh {
  const frame = partFrame(pose);
  const own = new Float64Array(positions.length);
  for (let i = 0; i < positions.length; i += 3)
    own.set(toFrame(frame, [positions[i]!, positions[i + 1]!, positions[i + 2]!]), i);
  return { positions: own, triangles };
}
