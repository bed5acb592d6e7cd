/**
 * How long waves take through a pipe, or through part of it, remembered: ways that pass it at nearly the same time of the cycle take nearly as
 * long. Traced back every few degrees, linear between. Crank degrees.
 */

import { CYCLE } from './cycle';
import { traceBack } from './traceBack';
import { reachOf, type WaveField } from './waveField';
import type { Direction } from './waveStation';

/** Degrees between the ways that are traced. */
const GRID = 4;

/**
 * @returns degrees before `angle` at which a wave that is at x then was at each of `stops` and came into the pipe (the last); null where none
 * comes that way
 */
export type Passages = (
  pipe: string,
  direction: Direction,
  x: number,
  stops: readonly number[],
  angle: number,
) => readonly number[] | null;

/** @param rpm of the crank */
export function passagesOf(field: WaveField, rpm: number): Passages {
  const made = new Map<string, (readonly number[] | null | undefined)[]>();
  return (pipe, direction, x, stops, angle) => {
    const key = `${pipe} ${direction} ${x}`;
    const grid = made.get(key) ?? [];
    made.set(key, grid);
    const at = (k: number): readonly number[] | null => {
      const slot = ((k % (CYCLE / GRID)) + CYCLE / GRID) % (CYCLE / GRID);
      if (grid[slot] === undefined) grid[slot] = delays(field, rpm, pipe, direction, x, stops, slot * GRID);
      return grid[slot]!;
    };
    const low = Math.floor(angle / GRID);
    const [before, after] = [at(low), at(low + 1)];
    if (!before || !after) return null;
    const share = angle / GRID - low;
    return before.map((delay, k) => delay * (1 - share) + after[k]! * share);
  };
}

function delays(
  field: WaveField,
  rpm: number,
  pipe: string,
  direction: Direction,
  x: number,
  stops: readonly number[],
  angle: number,
): number[] | null {
  const leg = traceBack(field, rpm, pipe, direction, x, angle);
  if (!leg) return null;
  const [from, to] = reachOf(field.pipes.get(pipe)!);
  return [...stops, direction > 0 ? from : to].map((stop) => {
    const k = leg.x.findIndex((at) => direction * (at - stop) >= 0);
    if (k <= 0) return angle - leg.angles[Math.max(0, k)]!;
    const [a, b] = [leg.x[k - 1]!, leg.x[k]!];
    const share = a === b ? 0 : (stop - a) / (b - a);
    return angle - (leg.angles[k - 1]! + (leg.angles[k]! - leg.angles[k - 1]!) * share);
  });
}
