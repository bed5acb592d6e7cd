/**
 * From places on the base to the shape that is meant: a box by two corners and a height, a cylinder by its middle, its rim and
 * a height, a bar by its ends and a radius, a plane by a place and the way it faces. Pure; mm, the design's frame.
 */
import { addScaled, distance, dot, norm, RADIANS, scale, sub, unit } from '../../../geometry';
import type { NewShape, PlacedShape } from '../../../shared/design/edit';
import type { Vec3 } from '../../../shared/vec3';
import type { Sight } from '../shape/pointer';
import { type Base, onBase, roundOn, roundTo, tidy, tidyLength } from './base';

/** What the first stroke set. A plane's `b` is `a` where it lies flat on the base. */
export type Stroke = { readonly shape: NewShape; readonly base: Base; readonly a: Vec3; readonly b: Vec3 };

/** The way a plane faces is rounded to this in its base. */
const TURN = 15 * RADIANS;
/** Looking along the normal within this, a height does not show on the picture: up on the screen is toward the eye. */
const ALONG = Math.cos(25 * RADIANS);

/** The first stroke's own sizes: a box's sides along the base, or one radius or length. */
export function strokeSizes({ shape, base, a, b }: Stroke): readonly number[] {
  const off = sub(b, a);
  if (shape === 'box') return [Math.abs(dot(off, base.u)), Math.abs(dot(off, base.v))];
  return [norm(off)];
}

/** Where the stroke ends for a pointer at `at`: a round place, but of a cylinder it is the radius that is round. */
export function endOf({ shape, base, a }: Omit<Stroke, 'b'>, at: Vec3, free: boolean): Vec3 {
  if (shape !== 'cylinder' || free) return roundOn(base, at, a, free);
  const radius = roundTo(distance(a, at), base.step);
  return radius === 0 ? a : addScaled(a, unit(sub(at, a)), radius);
}

/** Whether there is enough of it to go on from. A plane needs no more than its place. */
export const isEnough = (stroke: Stroke): boolean =>
  stroke.shape === 'plane' || strokeSizes(stroke).every((size) => size > 1e-3);

/** The way a plane faces: along the stroke, or off the base where there is none. */
export function facing({ base, a, b }: Stroke): Vec3 {
  const off = sub(b, a);
  if (norm(off) === 0) return tidyWay(base.normal);
  const turn = roundTo(Math.atan2(dot(off, base.v), dot(off, base.u)), TURN);
  return tidyWay(addScaled(scale(base.u, Math.cos(turn)), base.v, Math.sin(turn)));
}

const tidyWay = (way: Vec3): Vec3 => way.map((x) => Number(x.toFixed(6)) + 0) as unknown as Vec3;

/**
 * The second stroke's one size: a height along the base's normal, which may go either way, or a bar's radius. Counted from
 * where the first stroke ended, so that it begins at none.
 */
export function secondSize({ shape, base, a, b }: Stroke, sight: Sight, free: boolean): number | null {
  const raw = shape === 'capsule' ? fromAxis(base, a, b, sight) : height(base, b, sight);
  if (raw === null || Math.abs(raw) > 10_000) return null;
  return tidyLength(free ? raw : roundTo(raw, base.step));
}

function height({ normal }: Base, at: Vec3, sight: Sight): number | null {
  if (Math.abs(dot(normal, sight.back)) > ALONG) {
    // In the plane of the picture through the place.
    const t = dot(sub(at, sight.from), sight.back) / dot(sight.way, sight.back);
    return dot(sub(addScaled(sight.from, sight.way, t), at), sight.up) * Math.sign(dot(normal, sight.back));
  }
  // Nearest to the line of sight on the line through the place.
  const off = sub(sight.from, at);
  const c = dot(normal, sight.way);
  const square = 1 - c * c;
  return square < 1e-6 ? null : (dot(off, normal) - c * dot(off, sight.way)) / square;
}

function fromAxis(base: Base, a: Vec3, b: Vec3, sight: Sight): number | null {
  const at = onBase(base, sight);
  if (!at) return null;
  const along = sub(b, a);
  const share = dot(sub(at, a), along) / dot(along, along);
  return distance(at, addScaled(a, along, Math.max(0, Math.min(1, share))));
}

/** @param size of the second stroke @returns null while it has no room inside */
export function shapeOf(stroke: Stroke, size: number): PlacedShape | null {
  const { shape, base, a, b } = stroke;
  if (shape === 'plane') return { shape, position: a, normal: facing(stroke) };
  if (!isEnough(stroke) || size === 0) return null;
  if (shape === 'capsule') return { shape, a, b, radius: size };
  const top = (p: Vec3): Vec3 => tidy(addScaled(p, base.normal, size));
  if (shape === 'cylinder') return { shape, a, b: top(a), radius: tidyLength(distance(a, b)) };
  const corners = [a, b, top(b)];
  const least = (i: number) => Math.min(...corners.map((p) => p[i]!));
  const most = (i: number) => Math.max(...corners.map((p) => p[i]!));
  return { shape, min: [least(0), least(1), least(2)], max: [most(0), most(1), most(2)] };
}
