/** What the camera fits and where labels hang: balls round the header's parts. mm, in the design's frame. */
import {
  add,
  addScaled,
  distance,
  type Header,
  lerp,
  type Meshes,
  pointAt,
  type ResolvedRunner,
  sampleCenterline,
} from '../../../../geometry';
import { remembered } from '../../../../shared/remember';
import type { Vec3 } from '../../../../shared/vec3';
import type { ShownPart } from '../../made/shape';
import { boxOf } from '../../meshes/facts';
import { lieOf, lowestOf } from '../../meshes/lie';
import type { Ball } from '../camera/fit';
import type { Exploded } from './explode';
import { cornersOfPart } from './joinShapes';
import { fromPlate, type Plate, plates } from './plates';

export type Bounds = { readonly low: Vec3; readonly high: Vec3 };

/** Coarse enough to be few, fine enough that a fit does not cut a bend: the sagitta is far below the border kept. */
const FIT_SAGITTA = 4;

const runnerBalls = remembered(({ centerline, tubeRadius }: ResolvedRunner): readonly Ball[] =>
  centerline ? sampleCenterline(centerline, FIT_SAGITTA).map((s) => ({ at: s.position, radius: tubeRadius })) : [],
);

const plateBalls = remembered((plate: Plate): readonly Ball[] =>
  plate.flange ? plate.outline.map((corner) => ({ at: fromPlate(plate, corner), radius: 0 })) : [],
);

/** The header itself, not its surroundings, which may be ten times its size. */
export const headerBalls: (header: Header) => readonly Ball[] = remembered((header) => {
  const balls: Ball[] = [];
  for (const { pose, port } of header.ports.values()) {
    const o = port.opening;
    balls.push({ at: pose.position, radius: o.shape === 'round' ? o.diameter / 2 : Math.max(o.width, o.height) / 2 });
  }
  for (const plate of plates(header)) balls.push(...plateBalls(plate));
  for (const { body } of header.merges.values()) {
    balls.push({ at: body.position, radius: body.startRadius });
    balls.push({ at: addScaled(body.position, body.axis, body.length), radius: body.endRadius });
  }
  for (const runner of header.runners) balls.push(...runnerBalls(runner));
  return balls;
});

/** Round what stands off its place: the corners of parts' boxes, the head, and runners that hang on a collector. */
export function apartBalls(header: Header, parts: readonly ShownPart[], exploded: Exploded): Ball[] {
  const own = parts.flatMap((part) => {
    const off = exploded.parts.get(part.id);
    return off ? cornersOfPart(part).map((corner) => ({ at: add(corner, off), radius: 0 })) : [];
  });
  const heads = plates(header).flatMap((plate) => {
    const off = exploded.plates.get(plate.id)?.head;
    return off ? plate.outline.map((corner) => ({ at: add(fromPlate(plate, corner), off), radius: 0 })) : [];
  });
  const hung = header.runners.flatMap((runner) => {
    const off = exploded.runners.get(runner.runner.id);
    return off ? runnerBalls(runner).map(({ at, radius }) => ({ at: add(at, off), radius })) : [];
  });
  return [...own, ...heads, ...hung];
}

/** Lowest point of header and surroundings: the ground lies below it. */
export function lowest(header: Header, meshes: Meshes): number {
  let z = Number.POSITIVE_INFINITY;
  for (const { at, radius } of headerBalls(header)) z = Math.min(z, at[2] - radius);
  for (const s of header.surroundings) {
    if (s.shape === 'box') z = Math.min(z, s.min[2], s.max[2]);
    if (s.shape === 'capsule' || s.shape === 'cylinder') z = Math.min(z, s.a[2] - s.radius, s.b[2] - s.radius);
    const soup = s.shape === 'mesh' ? meshes.get(s.file) : undefined;
    // A turned mesh reaches a little less low than the box round it; walking millions of corners would tell.
    if (s.shape === 'mesh' && soup) z = Math.min(z, lowestOf(lieOf(s), boxOf(soup)));
  }
  return Number.isFinite(z) ? z : 0;
}

/** Corners of the upright box round the balls. */
export const boundsOf: (balls: readonly Ball[]) => Bounds | null = remembered((balls) => {
  if (balls.length === 0) return null;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const { at, radius } of balls)
    for (let i = 0; i < 3; i++) {
      low[i] = Math.min(low[i]!, at[i]! - radius);
      high[i] = Math.max(high[i]!, at[i]! + radius);
    }
  return { low: low as unknown as Vec3, high: high as unknown as Vec3 };
});

export function middleOf(balls: readonly Ball[]): Ball {
  const bounds = boundsOf(balls);
  if (!bounds) return { at: [0, 0, 0], radius: 100 };
  return { at: lerp(bounds.low, bounds.high, 0.5), radius: distance(bounds.low, bounds.high) / 2 };
}

/** Half way along a runner, where its label hangs. */
export function midway(header: Header, id: string): Vec3 | null {
  const line = header.runners.find((r) => r.runner.id === id)?.centerline;
  return line ? pointAt(line, line.length / 2).position : null;
}
