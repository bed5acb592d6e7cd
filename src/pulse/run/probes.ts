/** What probes read: linear between the two nearest cell centres. SI units. */
import { type CellState, DENSITY, type Gas, PRESSURE, STATE, VELOCITY } from '../equations/gas';
import type { GasColumns, PipeProfile, ProbeSeries } from '../report';
import type { Probe } from '../rig/types';
import { centreOf, type PipeGrid } from '../scheme/grid';

export type ProbePlace = { readonly probe: Probe; readonly cell: number; readonly beyond: number };

/** The cell before the probe, and how far it lies from that cell's centre towards the next, in cells: below 0 or above 1 beside an end. */
export function placeProbe(probe: Probe, pipe: PipeGrid): ProbePlace {
  const count = pipe.end - pipe.first;
  const along = (probe.x - pipe.from) / pipe.spacing - 0.5;
  // A pipe of one cell is one state.
  if (count === 1) return { probe, cell: pipe.first, beyond: 0 };
  const before = Math.min(Math.max(Math.floor(along), 0), count - 2);
  return { probe, cell: pipe.first + before, beyond: along - before };
}

export const columns = (length: number, carried: number): GasColumns => ({
  pressure: new Float64Array(length),
  velocity: new Float64Array(length),
  temperature: new Float64Array(length),
  density: new Float64Array(length),
  fractions: Array.from({ length: carried }, () => new Float64Array(length)),
});

export function readProbe({ cell, beyond }: ProbePlace, cells: CellState, row: number, into: GasColumns): void {
  const { state, temperature, fractions, stride } = cells;
  const s = STATE * cell;
  into.pressure[row] = positive(state[s + PRESSURE]!, state[s + STATE + PRESSURE]!, beyond);
  into.velocity[row] = between(state[s + VELOCITY]!, state[s + STATE + VELOCITY]!, beyond);
  into.temperature[row] = positive(temperature[cell]!, temperature[cell + 1]!, beyond);
  into.density[row] = positive(state[s]!, state[s + STATE]!, beyond);
  for (let k = 0; k < into.fractions.length; k++) {
    const at = k * stride + cell;
    into.fractions[k]![row] = between(fractions[at]!, fractions[at + 1]!, beyond);
  }
}

const between = (a: number, b: number, beyond: number): number => (beyond === 0 ? a : a + beyond * (b - a));

/** Half a cell beyond the last centre a steep front could lead below nothing: there the nearest centre is read. */
function positive(a: number, b: number, beyond: number): number {
  const value = between(a, b, beyond);
  return value > 0 ? value : beyond < 0.5 ? a : b;
}

export const seriesSoFar = ({ probe }: ProbePlace, all: GasColumns, rows: number): ProbeSeries => ({
  pipe: probe.pipe,
  x: probe.x,
  pressure: all.pressure.slice(0, rows),
  velocity: all.velocity.slice(0, rows),
  temperature: all.temperature.slice(0, rows),
  density: all.density.slice(0, rows),
  fractions: all.fractions.map((column) => column.slice(0, rows)),
});

export function profileOf(id: string, pipe: PipeGrid, cells: CellState, { carried }: Gas): PipeProfile {
  const { first, end } = pipe;
  const entry = (k: number) =>
    Float64Array.from({ length: end - first }, (_, j) => cells.state[STATE * (first + j) + k]!);
  return {
    pipe: id,
    x: Float64Array.from({ length: end - first }, (_, j) => centreOf(pipe, first + j)),
    pressure: entry(PRESSURE),
    velocity: entry(VELOCITY),
    temperature: cells.temperature.slice(first, end),
    density: entry(DENSITY),
    fractions: Array.from({ length: carried }, (_, k) =>
      cells.fractions.slice(k * cells.stride + first, k * cells.stride + end),
    ),
  };
}
