/**
 * Places along a path for rough measuring: cheap enough to look at thousands of shapes, near enough to choose by; the
 * solver and check have the last word. mm.
 */
import type { BendPath } from '../layout/bendPath';
import type { RunnerTask } from './task';

/** Between places along a line, mm. */
export const STEP = 12;

export type Line = {
  readonly tubeRadius: number;
  /** x, y, z of places every STEP or a little less, start to end. */
  readonly at: Float64Array;
  readonly count: number;
  readonly spacing: number;
  /** Where it ends and starts, and how far from there its neighbours may touch it. */
  readonly merge: string;
  readonly from: string;
  readonly bundledFrom: number;
  readonly bundledUntil: number;
  /** Two opposite corners of the box about it. */
  readonly low: Float64Array;
  readonly high: Float64Array;
};

/** @param bundles how far from its start and from its end neighbours may touch, mm along it */
export function lineOf(path: BendPath, { resolved, merge }: RunnerTask, bundles: readonly [number, number]): Line {
  const total = Math.max(path.length, STEP);
  const count = Math.max(2, Math.ceil(total / STEP) + 1);
  const spacing = total / (count - 1);
  const at = new Float64Array(3 * count);
  fill(path, at, count, spacing);
  const low = Float64Array.of(Infinity, Infinity, Infinity);
  const high = Float64Array.of(-Infinity, -Infinity, -Infinity);
  for (let i = 0; i < count; i++)
    for (let k = 0; k < 3; k++) {
      const value = at[3 * i + k]!;
      if (value < low[k]!) low[k] = value;
      if (value > high[k]!) high[k] = value;
    }
  const { from } = resolved.runner;
  return {
    tubeRadius: resolved.tubeRadius,
    at,
    count,
    spacing,
    merge,
    from: 'port' in from ? from.port : from.merge,
    bundledUntil: Math.floor(bundles[0] / spacing),
    bundledFrom: Math.ceil((total - bundles[1]) / spacing),
    low,
    high,
  };
}

function fill(path: BendPath, at: Float64Array, count: number, spacing: number): void {
  const { points: P, directions: D, setbacks, turns, radii, straights, bends } = path;
  let i = 0;
  let station = 0;
  for (let leg = 0; leg <= bends && i < count; leg++) {
    const d = 3 * leg;
    const start = leg > 0 ? setbacks[leg - 1]! : 0;
    const straight = Math.max(0, straights[leg]!);
    for (; i < count && i * spacing <= station + straight; i++) {
      const along = start + i * spacing - station;
      for (let k = 0; k < 3; k++) at[3 * i + k] = P[d + k]! + along * D[d + k]!;
    }
    station += straight;
    if (leg === bends) break;
    const theta = turns[leg]!;
    const R = radii[leg]!;
    const arc = R * theta;
    const s = Math.sin(theta);
    const c = Math.cos(theta);
    for (; i < count && i * spacing <= station + arc; i++) {
      const phi = (i * spacing - station) / R;
      const inward = s > 1e-9 ? (R * (1 - Math.cos(phi))) / s : 0;
      const forward = R * Math.sin(phi) - setbacks[leg]! - inward * c;
      for (let k = 0; k < 3; k++) at[3 * i + k] = P[d + 3 + k]! + forward * D[d + k]! + inward * D[d + 3 + k]!;
    }
    station += arc;
  }
  // Rounding, or straights too short to be walked, may leave the last places over: they are the end.
  for (; i < count; i++) for (let k = 0; k < 3; k++) at[3 * i + k] = P[3 * (bends + 1) + k]!;
}
