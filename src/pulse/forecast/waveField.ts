/**
 * Speeds of gas and sound anywhere in the pipes at any crank angle, read off a picture of the waves: bilinear between cell centres and
 * rows, periodic over a cycle, the outermost cell's own beyond its centre. The picture tells no composition: sound is that of
 * burnt gas at the temperature read, which fresh charge in the pipe makes wrong by a few per cent. SI units, degrees.
 */
import { mixture } from '../equations/mixture';
import type { PipePicture } from '../report';
import { CYCLE } from './cycle';
import type { WavePicture } from './types';

const BURNT = mixture(['burnt']);
const NONE = new Float64Array(0);
export const BURNT_CONSTANT = BURNT.gasConstant(NONE, 0, 1);
export const burntGamma = (temperature: number): number => BURNT.gamma(temperature, NONE, 0, 1);
/** m/s */
export const burntSound = (temperature: number): number =>
  Math.sqrt(burntGamma(temperature) * BURNT_CONSTANT * temperature);

export type WaveField = {
  readonly angles: Float32Array;
  /** Rows before the cycle begins again. */
  readonly rows: number;
  readonly pipes: ReadonlyMap<string, PipePicture>;
};

export function fieldOf({ angles, pipes }: WavePicture): WaveField {
  const last = angles.length - 1;
  // A last row a whole cycle after the first one says the same again.
  const again = last > 0 && angles[last]! - angles[0]! > CYCLE - 1e-3;
  return { angles, rows: again ? last : angles.length, pipes: new Map(pipes.map((pipe) => [pipe.pipe, pipe])) };
}

/** From the outer face of the first cell to that of the last, m: a little more than the pipe where its end is corrected. */
export function reachOf({ x }: Pick<PipePicture, 'x'>): readonly [from: number, to: number] {
  const last = x.length - 1;
  if (last < 1) return [0, 2 * (x[0] ?? 0)];
  return [x[0]! - (x[1]! - x[0]!) / 2, x[last]! + (x[last]! - x[last - 1]!) / 2];
}

/** Length of the shortest cell, m. */
export function cellOf({ x }: Pick<PipePicture, 'x'>): number {
  let least = x.length > 1 ? Infinity : 2 * (x[0] ?? 1);
  for (let i = 1; i < x.length; i++) least = Math.min(least, x[i]! - x[i - 1]!);
  return least;
}

export type Reading = { pressure: number; velocity: number; temperature: number };

/** @param angle crank degrees of the cylinder that fires first, of any cycle @param out is written and answered */
export function readField(
  field: WaveField,
  pipe: PipePicture,
  angle: number,
  x: number,
  out: Reading = { pressure: 0, velocity: 0, temperature: 0 },
): Reading {
  const { angles, rows } = field;
  const first = angles[0]!;
  const within = first + ((((angle - first) % CYCLE) + CYCLE) % CYCLE);
  const row = lastAtMost(angles, within, rows);
  const next = row + 1 < rows ? row + 1 : 0;
  const to = next > 0 ? angles[next]! : first + CYCLE;
  const later = Math.min(1, (within - angles[row]!) / (to - angles[row]!));
  const cells = pipe.x.length;
  const low = lastAtMost(pipe.x, x, cells);
  const high = Math.min(cells - 1, low + 1);
  const gap = pipe.x[high]! - pipe.x[low]!;
  const share = gap > 0 ? Math.min(1, Math.max(0, (x - pipe.x[low]!) / gap)) : 0;
  const read = (values: Float32Array) => {
    const along = (k: number) => values[k * cells + low]! * (1 - share) + values[k * cells + high]! * share;
    return along(row) * (1 - later) + along(next) * later;
  };
  out.pressure = read(pipe.pressure);
  out.velocity = read(pipe.velocity);
  out.temperature = read(pipe.temperature);
  return out;
}

/** @throws where the picture lacks the pipe */
export function pipeIn({ pipes }: WaveField, id: string): PipePicture {
  const pipe = pipes.get(id);
  if (!pipe) throw new Error(`the picture of the waves has no pipe "${id}"`);
  return pipe;
}

/** How fast a small wave runs along a pipe, u ± c over crank angle, m a degree. @param rpm of the crank @param direction 1 from start to finish, −1 back */
export function slopeIn(field: WaveField, pipe: PipePicture, direction: 1 | -1, rpm: number) {
  const reading: Reading = { pressure: 0, velocity: 0, temperature: 0 };
  return (angle: number, x: number): number => {
    const { velocity, temperature } = readField(field, pipe, angle, x, reading);
    return (velocity + direction * burntSound(temperature)) / (6 * rpm);
  };
}

/** The last of the rising list's first `count` entries that is no more; the first where none is. */
export function lastAtMost(list: ArrayLike<number>, at: number, count: number): number {
  let [low, high] = [0, count];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}
