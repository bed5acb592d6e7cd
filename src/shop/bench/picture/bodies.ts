/**
 * A header as what is drawn of it and what hides it, in the eye's frame: round pieces (tubes in chords, collectors) and flat
 * plates. A line is hidden where the way from it to the eye, along +z, meets a body. mm.
 */
import { dot, type Edge, isInLoop, norm, type Point2, sub, unit } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';

/** Of one radius from one end to the other; cones are several. */
export type Rod = { readonly from: Vec3; readonly to: Vec3; readonly radius: number };
/** A face of a plate: axes in the eye's frame, the outline as edges in the face. */
export type Face = {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly normal: Vec3;
  readonly edges: readonly Edge[];
};
export type Bodies = { readonly rods: readonly Rod[]; readonly faces: readonly Face[] };

/** What lies on a body's own surface is not hidden by it. */
const SHRUNK = 0.96;
const NEAR = 0.5;
/** A face seen on edge hides nothing. */
const ON_EDGE = 0.02;

type Ready = { readonly rod: Rod; readonly axis: Vec3; readonly length: number; readonly box: readonly number[] };

/** @returns whether a place is behind something */
export function hidingOf({ rods, faces }: Bodies): (p: Vec3) => boolean {
  const ready = rods.map((rod): Ready => {
    const along = sub(rod.to, rod.from);
    const { from, to, radius: r } = rod;
    const box = [0, 1].flatMap((k) => [Math.min(from[k]!, to[k]!) - r, Math.max(from[k]!, to[k]!) + r]);
    return { rod, axis: unit(along), length: norm(along), box: [...box, Math.max(from[2], to[2]) + r] };
  });
  return (p) => ready.some((one) => behindRod(p, one)) || faces.some((face) => behindFace(p, face));
}

function behindRod(p: Vec3, { rod: { from, radius }, axis: [ax, ay, az], length, box }: Ready): boolean {
  if (p[0] < box[0]! || p[0] > box[1]! || p[1] < box[2]! || p[1] > box[3]! || p[2] > box[4]!) return false;
  const [wx, wy, wz] = [p[0] - from[0], p[1] - from[1], p[2] - from[2]];
  const along = wx * ax + wy * ay + wz * az;
  // Square to the axis: of the place, and of the way to the eye.
  const [px, py, pz] = [wx - along * ax, wy - along * ay, wz - along * az];
  const [vx, vy, vz] = [-az * ax, -az * ay, 1 - az * az];
  const a = vx * vx + vy * vy + vz * vz;
  if (a < 1e-9) return false;
  const b = px * vx + py * vy + pz * vz;
  const c = px * px + py * py + pz * pz - (SHRUNK * radius) ** 2;
  const under = b * b - a * c;
  if (under <= 0) return false;
  return [1, -1].some((side) => {
    const way = (-b + side * Math.sqrt(under)) / a;
    const at = along + way * az;
    return way > NEAR && at >= 0 && at <= length;
  });
}

function behindFace(p: Vec3, { origin, x, y, normal, edges }: Face): boolean {
  if (Math.abs(normal[2]) < ON_EDGE) return false;
  const way = dot(sub(origin, p), normal) / normal[2];
  if (way < NEAR) return false;
  const on = sub([p[0], p[1], p[2] + way], origin);
  const flat: Point2 = [dot(on, x), dot(on, y)];
  return isInLoop(flat, edges);
}
