/**
 * MUSCL–Hancock, first half (van Leer, SIAM J. Sci. Stat. Comput. 5 (1984) 1; Toro 2009, section 14.4): a straight line through each
 * cell, limited, carried half a step ahead by the flow's own equations, and read off at both faces. In density, velocity and
 * pressure, with what area, wall friction and heat do.
 *
 * The limiter is the monotonized central one (van Leer, J. Comput. Phys. 23 (1977) 276): of the ones tried it is the most exact
 * that also holds smooth waves; see NOTES.md beside this file.
 */

import type { Planes } from '../ends/planes';
import type { CellState, FaceState } from '../equations/gas';
import type { Grid, PipeGrid } from './grid';
import type { Walls } from './walls';

/** Twice the gentler of both sides, or the slope across, whichever is least; 0 at an extremum. Differences per cell. */
function limited(before: number, after: number): number {
  if (before * after <= 0) return 0;
  const across = 0.5 * (before + after);
  const most = 2 * Math.min(Math.abs(before), Math.abs(after));
  return Math.abs(across) <= most ? across : before > 0 ? most : -most;
}

/** The same beside an end plane, half a cell away: no further than the state on the plane. `toPlane` is the difference per cell. */
function limitedAtEnd(toPlane: number, inward: number): number {
  if (toPlane * inward <= 0) return 0;
  const across = (2 * toPlane + inward) / 3;
  const most = Math.min(Math.abs(toPlane), 2 * Math.abs(inward));
  return Math.abs(across) <= most ? across : toPlane > 0 ? most : -most;
}

/**
 * Writes the state at half a step on the inner side of each face of the pipe: `right` of its start face on, `left` of its
 * finish face on.
 */
export function predict(
  grid: Grid,
  pipe: PipeGrid,
  cells: CellState,
  planes: Planes,
  walls: Walls,
  left: FaceState,
  right: FaceState,
  dt: number,
): void {
  const { density, velocity, pressure, gamma, temperature } = cells;
  const { widening } = grid;
  const { factor, perDiameter, wallTemperature, heatShare } = walls;
  const { density: rhoL, velocity: uL, pressure: pL } = left;
  const { density: rhoR, velocity: uR, pressure: pR } = right;
  const { first, end, ahead } = pipe;
  const half = (0.5 * dt) / pipe.spacing;
  const halfStep = 0.5 * dt;
  const last = end - 1;
  const start = 2 * ahead;

  let dRho = 2 * (density[first]! - planes.planeDensity[start]!);
  let dU = 2 * (velocity[first]! + planes.planeVelocity[start]!);
  let dP = 2 * (pressure[first]! - planes.planePressure[start]!);
  for (let i = first; i < end; i++) {
    const rho = density[i]!;
    const u = velocity[i]!;
    const p = pressure[i]!;
    let sRho: number;
    let sU: number;
    let sP: number;
    if (i === last) {
      sRho = limitedAtEnd(2 * (planes.planeDensity[start + 1]! - rho), dRho);
      sU = limitedAtEnd(2 * (planes.planeVelocity[start + 1]! - u), dU);
      sP = limitedAtEnd(2 * (planes.planePressure[start + 1]! - p), dP);
    } else {
      const nextRho = density[i + 1]! - rho;
      const nextU = velocity[i + 1]! - u;
      const nextP = pressure[i + 1]! - p;
      if (i === first) {
        sRho = limitedAtEnd(dRho, nextRho);
        sU = limitedAtEnd(dU, nextU);
        sP = limitedAtEnd(dP, nextP);
      } else {
        sRho = limited(dRho, nextRho);
        sU = limited(dU, nextU);
        sP = limited(dP, nextP);
      }
      dRho = nextRho;
      dU = nextU;
      dP = nextP;
    }

    const spread = half * sU + halfStep * u * widening[i]!;
    const stiff = gamma[i]! * p;
    let midRho = rho - half * u * sRho - rho * spread;
    let midU = u - half * (u * sU + sP / rho);
    let midP = p - half * u * sP - stiff * spread;
    const f = factor[i]!;
    if (f > 0) {
      const rate = 2 * f * Math.abs(u) * perDiameter[i]!;
      const less = gamma[i]! - 1;
      const heat = heatShare[i]! * rate * (gamma[i]! / less) * p * (wallTemperature[i]! / temperature[i]! - 1);
      midU -= halfStep * rate * u;
      midP += halfStep * less * (rho * rate * u * u + heat);
    }
    if (!(midRho > 0.5 * Math.abs(sRho) && midP > 0.5 * Math.abs(sP))) {
      // A line that would leave less than nothing at a face is not drawn.
      midRho = rho;
      midU = u;
      midP = p;
      sRho = 0;
      sU = 0;
      sP = 0;
    }
    const before = i + ahead;
    rhoR[before] = midRho - 0.5 * sRho;
    uR[before] = midU - 0.5 * sU;
    pR[before] = midP - 0.5 * sP;
    rhoL[before + 1] = midRho + 0.5 * sRho;
    uL[before + 1] = midU + 0.5 * sU;
    pL[before + 1] = midP + 0.5 * sP;
  }
}

/** The same for the carried fractions, which only go with the flow. */
export function predictFractions(
  pipe: PipeGrid,
  cells: CellState,
  planes: Planes,
  carried: number,
  left: FaceState,
  right: FaceState,
  dt: number,
): void {
  const { velocity, fractions, stride } = cells;
  const { first, end, ahead } = pipe;
  const half = (0.5 * dt) / pipe.spacing;
  const start = 2 * ahead;
  for (let k = 0; k < carried; k++) {
    const cellShift = k * stride;
    const faceShift = k * left.stride;
    const planeShift = k * planes.count;
    let before = 2 * (fractions[cellShift + first]! - planes.planeFractions[planeShift + start]!);
    for (let i = first; i < end; i++) {
      const y = fractions[cellShift + i]!;
      let slope: number;
      if (i === end - 1) {
        slope = limitedAtEnd(2 * (planes.planeFractions[planeShift + start + 1]! - y), before);
      } else {
        const after = fractions[cellShift + i + 1]! - y;
        slope = i === first ? limitedAtEnd(before, after) : limited(before, after);
        before = after;
      }
      const mid = y - half * velocity[i]! * slope;
      right.fractions[faceShift + i + ahead] = mid - 0.5 * slope;
      left.fractions[faceShift + i + ahead + 1] = mid + 0.5 * slope;
    }
  }
}
