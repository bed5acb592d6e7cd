/** An opening's effective area over time: linear between what is given, the first value before it and the last one after. s, m². */
import type { AreaLaw } from '../rig/types';

export type Opening = {
  at(time: number): number;
  /** The mean area within. */
  mean(from: number, to: number): number;
  /** The largest area within. */
  largest(from: number, to: number): number;
  /** Until when it stays shut; `time` itself where it is open then, Infinity where it never opens again. */
  shutUntil(time: number): number;
};

/** @param coefficient discharge coefficient: effective area / geometric area */
export function opening(law: AreaLaw, coefficient: number): Opening {
  if (typeof law === 'number') {
    const area = coefficient * law;
    return { at: () => area, mean: () => area, largest: () => area, shutUntil: (time) => (area > 0 ? time : Infinity) };
  }
  const count = law.length;
  const times = Float64Array.from(law, ([time]) => time);
  const areas = Float64Array.from(law, ([, area]) => coefficient * area);
  /** m² s from the first entry to each. */
  const sums = new Float64Array(count);
  for (let i = 1; i < count; i++)
    sums[i] = sums[i - 1]! + 0.5 * (areas[i - 1]! + areas[i]!) * (times[i]! - times[i - 1]!);
  /** The first entry that is later. */
  function later(time: number): number {
    let from = 0;
    let to = count;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (times[middle]! > time) to = middle;
      else from = middle + 1;
    }
    return from;
  }
  function at(time: number): number {
    const next = later(time);
    if (next === 0) return areas[0]!;
    if (next === count) return areas[count - 1]!;
    const begin = times[next - 1]!;
    const first = areas[next - 1]!;
    return first + ((areas[next]! - first) * (time - begin)) / (times[next]! - begin);
  }
  /** m² s from the first entry to an instant; below 0 before it. */
  function sumTo(time: number): number {
    const next = later(time);
    const known = Math.max(0, next - 1);
    return sums[known]! + 0.5 * (areas[known]! + at(time)) * (time - times[known]!);
  }
  function mean(from: number, to: number): number {
    const first = later(from);
    // Between two entries the middle is the mean, to the last digit.
    if (!(to > from) || later(to) === first) return at(0.5 * (from + to));
    return (sumTo(to) - sumTo(from)) / (to - from);
  }
  function largest(from: number, to: number): number {
    let most = Math.max(at(from), at(to));
    for (let i = later(from); i < count && times[i]! < to; i++) if (areas[i]! > most) most = areas[i]!;
    return most;
  }
  function shutUntil(time: number): number {
    if (at(time) > 0) return time;
    for (let i = later(time); i < count; i++) if (areas[i]! > 0) return Math.max(time, i === 0 ? time : times[i - 1]!);
    return Infinity;
  }
  return { at, mean, largest, shutUntil };
}
