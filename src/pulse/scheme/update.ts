/**
 * MUSCL–Hancock, second half: what has passed the faces in the step is added up, cell by cell, with the push of the walls where
 * the bore changes. Written so that resting gas stays at rest to the last digit: pressures on the faces are taken relative to the
 * cell's own.
 */
import { type CellState, CONSERVED, type FaceState, PRESSURE, SIDE } from '../equations/gas';
import { type Fluxes, PASSED } from '../fluxes/fluxes';
import type { Grid, PipeGrid } from './grid';

/** `from` → `to`. Walls that brake and heat are left to `brakeAndHeat`. */
export function update(
  grid: Grid,
  pipe: PipeGrid,
  from: CellState,
  to: CellState,
  sides: FaceState,
  { passed }: Fluxes,
  dt: number,
): void {
  const { area, perVolume } = grid;
  const { state } = sides;
  const before = from.conserved;
  const after = to.conserved;
  const { first, end, ahead } = pipe;
  let atStart = area[first + ahead]!;
  for (let i = first; i < end; i++) {
    const c = CONSERVED * i;
    const f = PASSED * (i + ahead);
    const s = SIDE * (2 * (i + ahead) + 1) + PRESSURE;
    const midP = 0.5 * (state[s]! + state[s + SIDE]!);
    const atFinish = area[i + ahead + 1]!;
    const step = dt * perVolume[i]!;
    after[c] = before[c]! + step * (atStart * passed[f]! - atFinish * passed[f + PASSED]!);
    after[c + 1] =
      before[c + 1]! + step * (atStart * (passed[f + 1]! - midP) - atFinish * (passed[f + PASSED + 1]! - midP));
    after[c + 2] = before[c + 2]! + step * (atStart * passed[f + 2]! - atFinish * passed[f + PASSED + 2]!);
    atStart = atFinish;
  }
}

export function updatePartial(
  grid: Grid,
  pipe: PipeGrid,
  from: CellState,
  to: CellState,
  out: Fluxes,
  carried: number,
  dt: number,
): void {
  const { area, perVolume } = grid;
  for (let k = 0; k < carried; k++) {
    const shift = k * from.stride;
    const faceShift = k * grid.faces;
    for (let i = pipe.first; i < pipe.end; i++) {
      const a = i + pipe.ahead;
      const passed = area[a]! * out.partial[faceShift + a]! - area[a + 1]! * out.partial[faceShift + a + 1]!;
      to.partial[shift + i] = from.partial[shift + i]! + dt * perVolume[i]! * passed;
    }
  }
}
