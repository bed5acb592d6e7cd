/**
 * MUSCL–Hancock, second half: what has passed the faces in the step is added up, cell by cell, with the push of the walls, their
 * friction and their heat, all at the middle of the step. Written so that resting gas stays at rest to the last digit: pressures
 * on the faces are taken relative to the cell's own.
 */
import type { CellState, FaceState } from '../equations/gas';
import type { Grid, PipeGrid } from './grid';
import type { Fluxes } from './state';
import type { Walls } from './walls';

/** `from` → `to`. Answers the heat that the pipe's walls gave, J. */
export function update(
  grid: Grid,
  pipe: PipeGrid,
  from: CellState,
  to: CellState,
  left: FaceState,
  right: FaceState,
  out: Fluxes,
  walls: Walls,
  dt: number,
): number {
  const { area, volume } = grid;
  const { mass, momentum, energy } = out;
  const { density: rhoL, velocity: uL, pressure: pL } = left;
  const { density: rhoR, velocity: uR, pressure: pR } = right;
  const { factor, perDiameter, heatShare, wallTemperature } = walls;
  const { first, end, ahead } = pipe;
  let heated = 0;
  for (let i = first; i < end; i++) {
    const a = i + ahead;
    const b = a + 1;
    const step = dt / volume[i]!;
    const atStart = step * area[a]!;
    const atFinish = step * area[b]!;
    const midP = 0.5 * (pR[a]! + pL[b]!);
    let pushed = from.momentum[i]! + atStart * (momentum[a]! - midP) - atFinish * (momentum[b]! - midP);
    let held = from.energy[i]! + atStart * energy[a]! - atFinish * energy[b]!;
    to.density[i] = from.density[i]! + atStart * mass[a]! - atFinish * mass[b]!;
    if (factor[i]! > 0) {
      // Half by where it was and half by where it goes: exact to second order, and a slow stream is never turned round.
      const rate = 2 * factor[i]! * Math.abs(0.5 * (uR[a]! + uL[b]!)) * perDiameter[i]!;
      const brake = Math.min(0.5 * dt * rate, 1);
      pushed = (pushed - brake * from.momentum[i]!) / (1 + brake);
      if (heatShare[i]! > 0) {
        const gamma = from.gamma[i]!;
        const midRho = 0.5 * (rhoR[a]! + rhoL[b]!);
        const t = (from.temperature[i]! * midP * from.density[i]!) / (from.pressure[i]! * midRho);
        const per = (heatShare[i]! * rate * gamma * midP) / ((gamma - 1) * t);
        // Held back, by what is of second order, where a step is long against the gas's warming: it never passes the wall's temperature.
        const share = dt * heatShare[i]! * rate * gamma;
        const heat = (per * (wallTemperature[i]! - t)) / (1 + share * share);
        held += dt * heat;
        heated += dt * heat * volume[i]!;
      }
    }
    to.momentum[i] = pushed;
    to.energy[i] = held;
    to.temperature[i] = from.temperature[i]!;
  }
  return heated;
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
  const { area, volume } = grid;
  for (let k = 0; k < carried; k++) {
    const shift = k * from.stride;
    const faceShift = k * grid.faces;
    for (let i = pipe.first; i < pipe.end; i++) {
      const a = i + pipe.ahead;
      const passed = area[a]! * out.partial[faceShift + a]! - area[a + 1]! * out.partial[faceShift + a + 1]!;
      to.partial[shift + i] = from.partial[shift + i]! + (dt / volume[i]!) * passed;
    }
  }
}
