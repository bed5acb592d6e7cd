/**
 * Writes down a cycle as it is followed: each cylinder at every degree of its own, and where asked for the gas in every pipe at even
 * angles. Each cycle overwrites the one before, so what stands at the end is the last one. Looking on changes no step.
 */
import { PRESSURE, STATE, VELOCITY } from '../equations/gas';
import type { CylinderTrace, WavePicture } from '../forecast/types';
import { centreOf } from '../scheme/grid';
import type { Cylinder } from './cylinder';
import type { Joined } from './join';

/** Rows of a trace: −360 to 360. */
const ROWS = 721;
/** Crank degrees from one row of waves to the next; a row is taken at the end of the step that comes by it. */
const WAVE_STEP = 2;

const VALUES = [
  'pressure',
  'temperature',
  'volume',
  'exhaustPort',
  'intakePort',
  'exhaustFlow',
  'intakeFlow',
  'exhaustLift',
  'intakeLift',
] as const;

export type Recorder = {
  /** A step stands: from `before` to `time`, s within the cycle. */
  look(before: number, time: number): void;
  traces(): CylinderTrace[];
  waves(): WavePicture | null;
};

export function recorder(joined: Joined, numbers: readonly number[], perSecond: number, withWaves: boolean): Recorder {
  const { cylinders, network } = joined;
  const tracks = cylinders.map(() => VALUES.map(() => new Float32Array(ROWS)));
  const last = cylinders.map(() => new Float64Array(VALUES.length).fill(Number.NaN));
  const now = new Float64Array(VALUES.length);
  const { planes } = network;
  const outer = cylinders.map(({ planes: of }) => [of[0]!, of.at(-1)!] as const);

  const read = (cylinder: Cylinder, k: number, angle: number) => {
    const [out, into] = outer[k]!;
    now[0] = cylinder.charge.pressure;
    now[1] = cylinder.charge.temperature;
    now[2] = cylinder.crank.volume(angle);
    now[3] = planes.pressure[out]!;
    now[4] = planes.pressure[into]!;
    now[5] = cylinder.exhaustFlow;
    now[6] = cylinder.intakeFlow;
    now[7] = cylinder.exhaust.liftAt(angle);
    now[8] = cylinder.intake.liftAt(angle);
  };
  const trace = (cylinder: Cylinder, k: number, before: number, turn: number) => {
    const from = cylinder.angleAt(before);
    const to = from + turn;
    const first = Math.ceil(from);
    if (first > to) return;
    const old = last[k]!;
    read(cylinder, k, to);
    for (let degree = first; degree <= to; degree++) {
      const part = turn > 0 ? (degree - from) / turn : 1;
      const row = degree >= 360 ? degree - 360 : degree + 360;
      for (let v = 0; v < VALUES.length; v++)
        tracks[k]![v]![row] = Number.isNaN(old[v]!) ? now[v]! : old[v]! + part * (now[v]! - old[v]!);
    }
  };

  const waves = withWaves ? waveTaker(joined, perSecond) : null;
  return {
    look(before, time) {
      const turn = (time - before) * perSecond;
      for (let k = 0; k < cylinders.length; k++) {
        trace(cylinders[k]!, k, before, turn);
        read(cylinders[k]!, k, cylinders[k]!.angleAt(before) + turn);
        last[k]!.set(now);
      }
      waves?.look(before, time);
    },
    traces: () =>
      tracks.map((columns, k) => {
        const values = Object.fromEntries(
          VALUES.map((name, v) => {
            const column = columns[v]!.slice();
            column[ROWS - 1] = column[0]!;
            return [name, column];
          }),
        ) as Record<(typeof VALUES)[number], Float32Array>;
        return { cylinder: numbers[k]!, angle: Float32Array.from({ length: ROWS }, (_, i) => i - 360), ...values };
      }),
    waves: () => waves?.picture() ?? null,
  };
}

function waveTaker({ network, stand, ids }: Joined, perSecond: number) {
  const rows = 720 / WAVE_STEP + 1;
  const { pipes } = network.grid;
  const panels = pipes.map((pipe, k) => {
    const room = () => new Float32Array(rows * (pipe.end - pipe.first));
    const x = Float64Array.from({ length: pipe.end - pipe.first }, (_, j) => centreOf(pipe, pipe.first + j));
    return { pipe: ids[k]!, x, pressure: room(), velocity: room(), temperature: room() };
  });
  const keep = (row: number) => {
    const { state, temperature } = stand.cells;
    for (const [k, { first, end }] of pipes.entries()) {
      const at = row * (end - first) - first;
      const panel = panels[k]!;
      for (let i = first; i < end; i++) {
        panel.pressure[at + i] = state[STATE * i + PRESSURE]!;
        panel.velocity[at + i] = state[STATE * i + VELOCITY]!;
        panel.temperature[at + i] = temperature[i]!;
      }
    }
  };
  return {
    look(before: number, time: number) {
      const row = Math.floor((time * perSecond) / WAVE_STEP + 1e-9);
      if (row < rows && row * WAVE_STEP > before * perSecond) keep(row);
    },
    picture: (): WavePicture => ({
      angles: Float32Array.from({ length: rows }, (_, i) => i * WAVE_STEP - 360),
      pipes: panels.map((panel) => {
        const cells = panel.x.length;
        const closed = (column: Float32Array) => {
          // A cycle begins where the last one ended.
          const whole = column.slice();
          whole.copyWithin(0, (rows - 1) * cells);
          return whole;
        };
        return {
          ...panel,
          pressure: closed(panel.pressure),
          velocity: closed(panel.velocity),
          temperature: closed(panel.temperature),
        };
      }),
    }),
  };
}
