/**
 * The two waves at one place of a pipe over the cycle, each less its mean: what steady flow makes of them says nothing of where a
 * change came from. In X, which adds (superposition.ts). Crank degrees of the cylinder that fires first.
 */

import { CYCLE } from './cycle';
import { waveNumbers } from './superposition';
import { pipeIn, readField, type WaveField } from './waveField';

export type Direction = 1 | -1;

export type Station = {
  /** X of the wave that runs so, less its mean over the cycle. 1: from the pipe's start to its finish. */
  at(direction: Direction, angle: number): number;
  /** Means over the cycle: speed of sound at p₀, m/s, and Pa that a little X is worth. */
  readonly sound: number;
  readonly worth: number;
};

export type Stations = (pipe: string, x: number) => Station;

/** Remembers what it has made. @param rest p₀, Pa @throws where the picture lacks the pipe */
export function stationsOf(field: WaveField, rest: number): Stations {
  const made = new Map<string, Station>();
  return (pipe, x) => {
    const key = `${pipe} ${x}`;
    const known = made.get(key);
    if (known) return known;
    const fresh = stationAt(field, pipe, x, rest);
    made.set(key, fresh);
    return fresh;
  };
}

function stationAt(field: WaveField, id: string, x: number, rest: number): Station {
  const pipe = pipeIn(field, id);
  const { rows, angles } = field;
  const [onward, back] = [new Float64Array(rows), new Float64Array(rows)];
  let [sound, worth] = [0, 0];
  for (let r = 0; r < rows; r++) {
    const { pressure, velocity, temperature } = readField(field, pipe, angles[r]!, x);
    const waves = waveNumbers(pressure, velocity, temperature, rest);
    onward[r] = waves.onward;
    back[r] = waves.back;
    sound += waves.rest / rows;
    worth += waves.worth / rows;
  }
  for (const series of [onward, back]) {
    const mean = series.reduce((sum, value) => sum + value, 0) / rows;
    series.forEach((value, r) => {
      series[r] = value - mean;
    });
  }
  const [first, step] = [angles[0]!, CYCLE / rows];
  return {
    sound,
    worth,
    at(direction, angle) {
      const series = direction > 0 ? onward : back;
      const row = ((((angle - first) / step) % rows) + rows) % rows;
      const low = Math.floor(row) % rows;
      const share = row - Math.floor(row);
      return series[low]! * (1 - share) + series[(low + 1) % rows]! * share;
    },
  };
}
