/**
 * Values read off a run's picture: linear between the two nearest cell centres and instants, as probes are; the outermost cell's
 * own value beyond its centre. SI units: x in m from the pipe's start, time in s.
 */
import type { PipePicture, RigRun } from '../../pulse/report';
import type { Quantity } from './quantities';

export type Picture = NonNullable<RigRun['picture']>;

/** Between which two entries of a rising list, and how far from the first to the second. */
export type Between = { readonly low: number; readonly high: number; readonly share: number };

export function between(list: ArrayLike<number>, at: number, count = list.length): Between {
  if (count < 2 || at <= list[0]!) return { low: 0, high: 0, share: 0 };
  if (at >= list[count - 1]!) return { low: count - 1, high: count - 1, share: 0 };
  let [low, high] = [0, count - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list[middle]! <= at) low = middle;
    else high = middle;
  }
  return { low, high, share: (at - list[low]!) / (list[high]! - list[low]!) };
}

/** Rows that the run has come to. */
export function rowsOf({ picture, time }: Pick<RigRun, 'picture' | 'time'>): number {
  if (!picture) return 0;
  const { times, pipes } = picture;
  let rows = times.length;
  for (const { x, pressure } of pipes) rows = Math.min(rows, Math.floor(pressure.length / x.length));
  while (rows > 0 && times[rows - 1]! > time * (1 + 1e-9)) rows--;
  return rows;
}

/** Null beyond what the run has come to. */
export function valueAt(
  picture: Picture,
  rows: number,
  pipe: number,
  x: number,
  time: number,
  quantity: Quantity,
): number | null {
  const of = picture.pipes[pipe];
  if (!of || rows === 0 || time > picture.times[rows - 1]! * (1 + 1e-9)) return null;
  const column = between(of.x, x);
  const row = between(picture.times, time, rows);
  const values = of[quantity];
  const cells = of.x.length;
  const along = (k: number) =>
    values[k * cells + column.low]! * (1 - column.share) + values[k * cells + column.high]! * column.share;
  return along(row.low) * (1 - row.share) + along(row.high) * row.share;
}

export type Range = { readonly low: number; readonly high: number };

/** The least and the greatest of all cells and rows; null where there is nothing yet. */
export function rangeOf(picture: Picture, rows: number, quantity: Quantity): Range | null {
  let [low, high] = [Infinity, -Infinity];
  for (const pipe of picture.pipes) {
    const values = pipe[quantity];
    const count = rows * pipe.x.length;
    for (let k = 0; k < count; k++) {
      const value = values[k]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return low <= high ? { low, high } : null;
}

/** From the outer face of the first cell to that of the last: a little more than the pipe where its end is corrected. */
export function extentOf({ x }: Pick<PipePicture, 'x'>): readonly [number, number] {
  const last = x.length - 1;
  if (last < 1) return [0, 2 * (x[0] ?? 0.5)];
  return [x[0]! - (x[1]! - x[0]!) / 2, x[last]! + (x[last]! - x[last - 1]!) / 2];
}
