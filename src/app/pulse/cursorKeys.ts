/** The arrow keys over the picture: one cell and one row at a time, ten with Shift; from one pipe into the next. SI units. */
import type { Picture } from './sample';
import type { Cursor } from './shown';

const LONG = 10;

const nearest = (list: ArrayLike<number>, at: number, count = list.length): number => {
  let best = 0;
  for (let k = 1; k < count; k++) if (Math.abs(list[k]! - at) < Math.abs(list[best]! - at)) best = k;
  return best;
};

/** Where a key takes it; null where the key means nothing here. From no place at all, any of them begins in the middle. */
export function movedBy(key: string, far: boolean, from: Cursor | null, picture: Picture, rows: number): Cursor | null {
  if (!['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'].includes(key))
    return null;
  if (rows === 0 || picture.pipes.length === 0) return null;
  const centre = (pipe: number, cell: number) => picture.pipes[pipe]!.x[cell]!;
  const cellsOf = (pipe: number) => picture.pipes[pipe]!.x.length;
  if (!from) return { pipe: 0, x: centre(0, cellsOf(0) >> 1), time: picture.times[rows >> 1]! };
  const { pipe } = from;
  const by = far ? LONG : 1;
  if (key === 'Home') return { ...from, x: centre(pipe, 0) };
  if (key === 'End') return { ...from, x: centre(pipe, cellsOf(pipe) - 1) };
  if (key === 'ArrowLeft' || key === 'ArrowRight') {
    const cell = nearest(picture.pipes[pipe]!.x, from.x) + (key === 'ArrowRight' ? by : -by);
    if (cell < 0 && pipe > 0) return { ...from, pipe: pipe - 1, x: centre(pipe - 1, cellsOf(pipe - 1) - 1) };
    if (cell >= cellsOf(pipe) && pipe < picture.pipes.length - 1)
      return { ...from, pipe: pipe + 1, x: centre(pipe + 1, 0) };
    return { ...from, x: centre(pipe, Math.min(cellsOf(pipe) - 1, Math.max(0, cell))) };
  }
  const up = key === 'ArrowUp' || key === 'PageUp';
  const step = key.startsWith('Page') ? LONG : by;
  const row = nearest(picture.times, from.time, rows) + (up ? step : -step);
  return { ...from, time: picture.times[Math.min(rows - 1, Math.max(0, row))]! };
}
