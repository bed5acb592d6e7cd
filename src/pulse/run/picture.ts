/** Rows of an x–t picture, taken as the run comes by their instants: looking on changes no step. */
import { type CellState, PRESSURE, STATE, VELOCITY } from '../equations/gas';
import type { PipePicture, RigRun } from '../report';
import { centreOf, type PipeGrid } from '../scheme/grid';

export type PictureTaker = {
  /** Keeps the state if a row is due at `time`. */
  look(time: number, cells: CellState): void;
  soFar(): RigRun['picture'];
};

export function takePicture(
  ids: readonly string[],
  pipes: readonly PipeGrid[],
  duration: number,
  rows: number,
): PictureTaker {
  if (rows < 2) return { look: () => {}, soFar: () => null };
  const times = new Float64Array(rows);
  const room = (pipe: PipeGrid) => new Float32Array(rows * (pipe.end - pipe.first));
  const panels = pipes.map(
    (pipe, k): PipePicture => ({
      pipe: ids[k]!,
      x: Float64Array.from({ length: pipe.end - pipe.first }, (_, j) => centreOf(pipe, pipe.first + j)),
      pressure: room(pipe),
      velocity: room(pipe),
      temperature: room(pipe),
    }),
  );
  let taken = 0;
  const keep = (time: number, cells: CellState) => {
    times[taken] = time;
    for (let k = 0; k < pipes.length; k++) {
      const { first, end } = pipes[k]!;
      const at = taken * (end - first);
      const panel = panels[k]!;
      for (let i = first; i < end; i++) {
        panel.pressure[at + i - first] = cells.state[STATE * i + PRESSURE]!;
        panel.velocity[at + i - first] = cells.state[STATE * i + VELOCITY]!;
        panel.temperature[at + i - first] = cells.temperature[i]!;
      }
    }
    taken++;
  };
  return {
    look: (time, cells) => {
      if (taken < rows && time >= (taken / (rows - 1)) * duration * (1 - 1e-12)) keep(time, cells);
    },
    soFar: () => ({
      times: times.slice(0, taken),
      pipes: panels.map((panel) => {
        const length = taken * panel.x.length;
        return {
          ...panel,
          x: panel.x.slice(),
          pressure: panel.pressure.slice(0, length),
          velocity: panel.velocity.slice(0, length),
          temperature: panel.temperature.slice(0, length),
        };
      }),
    }),
  };
}
