/** What the camera fits and where labels hang: balls round the header's parts. mm, in the design's frame. */
import { addScaled, type Header, pointAt, sampleCenterline } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ball } from '../camera/fit';
import { fromPlate, plates } from './plates';

/** Coarse enough to be few, fine enough that a fit does not cut a bend: the sagitta is far below the border kept. */
const FIT_SAGITTA = 4;

/** The header itself, not its surroundings, which may be ten times its size. */
export function headerBalls(header: Header): Ball[] {
  const balls: Ball[] = [];
  for (const { pose, port } of header.ports.values()) {
    const o = port.opening;
    balls.push({ at: pose.position, radius: o.shape === 'round' ? o.diameter / 2 : Math.max(o.width, o.height) / 2 });
  }
  for (const plate of plates(header)) {
    if (!plate.flange) continue;
    for (const corner of plate.outline) balls.push({ at: fromPlate(plate, corner), radius: 0 });
  }
  for (const { body } of header.merges.values()) {
    balls.push({ at: body.position, radius: body.startRadius });
    balls.push({ at: addScaled(body.position, body.axis, body.length), radius: body.endRadius });
  }
  for (const { centerline, tubeRadius } of header.runners) {
    if (!centerline) continue;
    for (const s of sampleCenterline(centerline, FIT_SAGITTA)) balls.push({ at: s.position, radius: tubeRadius });
  }
  return balls;
}

/** Lowest point of header and surroundings: the ground lies below it. */
export function lowest(header: Header, meshes: readonly ArrayLike<number>[]): number {
  let z = Number.POSITIVE_INFINITY;
  for (const { at, radius } of headerBalls(header)) z = Math.min(z, at[2] - radius);
  for (const s of header.surroundings) {
    if (s.shape === 'box') z = Math.min(z, s.min[2], s.max[2]);
    if (s.shape === 'capsule') z = Math.min(z, s.a[2] - s.radius, s.b[2] - s.radius);
  }
  for (const soup of meshes) for (let i = 2; i < soup.length; i += 3) z = Math.min(z, soup[i]!);
  return Number.isFinite(z) ? z : 0;
}

export function middleOf(balls: readonly Ball[]): Ball {
  if (balls.length === 0) return { at: [0, 0, 0], radius: 100 };
  const low = [0, 1, 2].map((i) => Math.min(...balls.map((b) => b.at[i]! - b.radius)));
  const high = [0, 1, 2].map((i) => Math.max(...balls.map((b) => b.at[i]! + b.radius)));
  const at = low.map((l, i) => (l + high[i]!) / 2) as unknown as Vec3;
  return { at, radius: Math.hypot(...low.map((l, i) => high[i]! - l)) / 2 };
}

/** Half way along a runner, where its label hangs. */
export function midway(header: Header, id: string): Vec3 | null {
  const line = header.runners.find((r) => r.runner.id === id)?.centerline;
  return line ? pointAt(line, line.length / 2).position : null;
}
