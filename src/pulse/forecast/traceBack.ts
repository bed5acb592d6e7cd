/**
 * Where a wave that is at some place now has come into its pipe, and when: along the characteristic dx/dt = u ± c that it came by, against
 * time. Heun's rule, steps of less than about two cells; the last one is shortened to end at the pipe's end. SI units, crank degrees.
 */

import { CYCLE } from './cycle';
import { cellOf, pipeIn, reachOf, slopeIn, type WaveField } from './waveField';
import type { Direction } from './waveStation';

/** Angles rise: from where it came in to where it is. */
export type BackLeg = {
  readonly pipe: string;
  readonly direction: Direction;
  readonly angles: Float64Array;
  readonly x: Float64Array;
};

/** Sound at so much crosses one cell a step, m/s: hot gas less than two. */
const FAST = 500;

/** @param angle of the cylinder that fires first @returns null where gas as fast as sound lets no wave come that way within a cycle */
export function traceBack(
  field: WaveField,
  rpm: number,
  id: string,
  direction: Direction,
  x: number,
  angle: number,
): BackLeg | null {
  const pipe = pipeIn(field, id);
  const slope = slopeIn(field, pipe, direction, rpm);
  const [from, to] = reachOf(pipe);
  const begin = direction > 0 ? from : to;
  const step = (cellOf(pipe) / FAST) * 6 * rpm;
  const angles = [angle];
  const xs = [x];
  let [now, place] = [angle, x];
  while (direction * (place - begin) > 1e-9) {
    if (angle - now > CYCLE) return null;
    const first = slope(now, place);
    const mean = (first + slope(now - step, place - step * first)) / 2;
    const next = place - step * mean;
    const share = direction * (next - begin) < 0 ? (place - begin) / (place - next) : 1;
    now -= step * share;
    // Swept on beyond where it is found, it waited there.
    place = share < 1 ? begin : direction * (next - x) > 0 ? x : next;
    angles.push(now);
    xs.push(place);
  }
  return { pipe: id, direction, angles: Float64Array.from(angles.reverse()), x: Float64Array.from(xs.reverse()) };
}
