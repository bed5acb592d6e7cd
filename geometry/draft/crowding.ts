/**
 * How much lines are in each other's way, and in that of bodies: a rough measure on points along them, good enough to
 * choose which shapes to try together; check has the last word. mm; results in mm², zero where there is room.
 */
import type { Capsule } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { centerline } from '../curve/centerline';
import { pointAt } from '../curve/pointAt';
import type { Frustum } from '../header/merge';
import { SELF_SEPARATION } from '../tolerance';
import { addScaled, distance, dot, sub } from '../vector';
import type { Shape } from './shapes';

/** Between points along a line: gaps are overstated by less than 2 mm for ordinary tubes. */
const STEP = 16;

export type Line = {
  readonly radius: number;
  /** x, y, z of points every STEP, start to end. */
  readonly at: Float64Array;
  readonly count: number;
  /** Points from this one on lie within the bundle of the merge it enters. */
  readonly bundled: number;
  readonly merge: string;
  readonly low: Vec3;
  readonly high: Vec3;
};

export function lineOf(shape: Shape, bendRadius: number, radius: number, merge: string, bundle: number): Line {
  const line = centerline(
    shape.points,
    shape.points.slice(2).map(() => bendRadius),
  );
  const count = Math.max(2, Math.ceil(line.length / STEP) + 1);
  const at = new Float64Array(3 * count);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    const { position } = pointAt(line, (line.length * i) / (count - 1));
    for (let k = 0; k < 3; k++) {
      at[3 * i + k] = position[k]!;
      low[k] = Math.min(low[k]!, position[k]!);
      high[k] = Math.max(high[k]!, position[k]!);
    }
  }
  const inBundle = Math.floor((bundle / Math.max(line.length, 1)) * (count - 1));
  return { radius, at, count, bundled: Math.max(0, count - 1 - inBundle), merge, low, high };
}

/** @param gap the least allowed between them */
export function crowding(a: Line, b: Line, gap: number): number {
  const need = a.radius + b.radius + gap;
  for (let k = 0; k < 3; k++) if (a.low[k]! - b.high[k]! > need || b.low[k]! - a.high[k]! > need) return 0;
  const together = a.merge === b.merge;
  let sum = 0;
  for (let i = 0; i < a.count; i++) {
    const [x, y, z] = [a.at[3 * i]!, a.at[3 * i + 1]!, a.at[3 * i + 2]!];
    const until = together && i >= a.bundled ? b.bundled : b.count;
    let least = need * need;
    for (let j = 0; j < until; j++) {
      const [dx, dy, dz] = [b.at[3 * j]! - x, b.at[3 * j + 1]! - y, b.at[3 * j + 2]! - z];
      const square = dx * dx + dy * dy + dz * dz;
      if (square < least) least = square;
    }
    if (least < need * need) sum += (need - Math.sqrt(least)) ** 2;
  }
  return sum;
}

/** A line against itself: parts farther apart along it than SELF_SEPARATION diameters. */
export function selfCrowding(line: Line): number {
  const need = 2 * line.radius;
  const skip = Math.ceil((SELF_SEPARATION * need) / STEP) + 1;
  let sum = 0;
  for (let i = 0; i < line.count; i++)
    for (let j = i + skip; j < line.count; j++) {
      const d = Math.hypot(
        line.at[3 * i]! - line.at[3 * j]!,
        line.at[3 * i + 1]! - line.at[3 * j + 1]!,
        line.at[3 * i + 2]! - line.at[3 * j + 2]!,
      );
      if (d < need) sum += (need - d) ** 2;
    }
  return sum;
}

export type Bar = { readonly a: Vec3; readonly b: Vec3; readonly radius: number; readonly clearance: number };

export const barOf = (capsule: Capsule): Bar => ({ ...capsule, clearance: capsule.clearance ?? 0 });

/** A merge's body as a bar as thick as its middle. */
export const bodyBar = ({ position, axis, length, startRadius, endRadius }: Frustum): Bar => {
  const radius = (startRadius + endRadius) / 2;
  return {
    a: addScaled(position, axis, Math.min(radius, length / 2)),
    b: addScaled(position, axis, Math.max(length - radius, length / 2)),
    radius,
    clearance: 0,
  };
};

/** @param skipStart points at the line's start that do not count: a tube's end is flat, and it starts at the head */
export function obstruction(line: Line, bar: Bar, skipStart = 0): number {
  const need = line.radius + bar.radius + bar.clearance;
  const along = sub(bar.b, bar.a);
  const square = dot(along, along);
  let sum = 0;
  for (let i = skipStart; i < line.count; i++) {
    const p: Vec3 = [line.at[3 * i]!, line.at[3 * i + 1]!, line.at[3 * i + 2]!];
    const t = square > 0 ? Math.min(1, Math.max(0, dot(sub(p, bar.a), along) / square)) : 0;
    const d = distance(p, addScaled(bar.a, along, t));
    if (d < need) sum += (need - d) ** 2;
  }
  return sum;
}
