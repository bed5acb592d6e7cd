/**
 * MUSCL–Hancock, first half (van Leer, SIAM J. Sci. Stat. Comput. 5 (1984) 1; Toro 2009, section 14.4): a straight line through each
 * cell, limited, carried half a step ahead by the flow's own equations, and read off at both faces. In density, velocity and
 * pressure, with what the bore's widening does; what walls do follows in `walls.ts`.
 *
 * The limiter is the monotonized central one (van Leer, J. Comput. Phys. 23 (1977) 276): of the ones tried it is the most exact
 * that also holds smooth waves; see NOTES.md beside this file.
 */
import type { Planes } from '../ends/planes';
import { type CellState, type FaceState, SIDE, STATE } from '../equations/gas';
import type { Grid, PipeGrid } from './grid';

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
 * Writes the state at half a step on the inner side of each face of the pipe: the finish side of its start face, both sides of all
 * faces inside, the start side of its finish face. Walls are left to `predictWalls`.
 */
export function predict(
  grid: Grid,
  pipe: PipeGrid,
  cells: CellState,
  planes: Planes,
  sides: FaceState,
  dt: number,
): void {
  const { state } = cells;
  const out = sides.state;
  const { widening } = grid;
  const { first, end, ahead } = pipe;
  const half = (0.5 * dt) / pipe.spacing;
  const halfStep = 0.5 * dt;
  const last = end - 1;
  const plane = 2 * ahead;

  let rho = state[STATE * first]!;
  let u = state[STATE * first + 1]!;
  let p = state[STATE * first + 2]!;
  // Differences per cell: to the plane, half a cell away, and from cell to cell.
  let dRho = 2 * (rho - planes.planeDensity[plane]!);
  let dU = 2 * (u + planes.planeVelocity[plane]!);
  let dP = 2 * (p - planes.planePressure[plane]!);
  for (let i = first; i < end; i++) {
    const next = STATE * (i + 1);
    const stiff = state[next - 1]! * p;
    let nextRho: number;
    let nextU: number;
    let nextP: number;
    let sRho: number;
    let sU: number;
    let sP: number;
    if (i > first && i < last) {
      nextRho = state[next]!;
      nextU = state[next + 1]!;
      nextP = state[next + 2]!;
      const afterRho = nextRho - rho;
      const afterU = nextU - u;
      const afterP = nextP - p;
      sRho = limited(dRho, afterRho);
      sU = limited(dU, afterU);
      sP = limited(dP, afterP);
      dRho = afterRho;
      dU = afterU;
      dP = afterP;
    } else if (i === last) {
      nextRho = rho;
      nextU = u;
      nextP = p;
      sRho = limitedAtEnd(2 * (planes.planeDensity[plane + 1]! - rho), dRho);
      sU = limitedAtEnd(2 * (planes.planeVelocity[plane + 1]! - u), dU);
      sP = limitedAtEnd(2 * (planes.planePressure[plane + 1]! - p), dP);
    } else {
      nextRho = state[next]!;
      nextU = state[next + 1]!;
      nextP = state[next + 2]!;
      sRho = limitedAtEnd(dRho, nextRho - rho);
      sU = limitedAtEnd(dU, nextU - u);
      sP = limitedAtEnd(dP, nextP - p);
      dRho = nextRho - rho;
      dU = nextU - u;
      dP = nextP - p;
    }

    const spread = half * sU + halfStep * u * widening[i]!;
    let midRho = rho - half * u * sRho - rho * spread;
    let midU = u - half * (u * sU + sP / rho);
    let midP = p - half * u * sP - stiff * spread;
    if (!(midRho > 0.5 * Math.abs(sRho) && midP > 0.5 * Math.abs(sP))) {
      // A line that would leave less than nothing at a face is not drawn.
      midRho = rho;
      midU = u;
      midP = p;
      sRho = 0;
      sU = 0;
      sP = 0;
    }
    const a = SIDE * (2 * (i + ahead) + 1);
    out[a] = midRho - 0.5 * sRho;
    out[a + 1] = midU - 0.5 * sU;
    out[a + 2] = midP - 0.5 * sP;
    out[a + SIDE] = midRho + 0.5 * sRho;
    out[a + SIDE + 1] = midU + 0.5 * sU;
    out[a + SIDE + 2] = midP + 0.5 * sP;
    rho = nextRho;
    u = nextU;
    p = nextP;
  }
}

/** The same for the carried fractions, which only go with the flow. */
export function predictFractions(
  pipe: PipeGrid,
  cells: CellState,
  planes: Planes,
  carried: number,
  sides: FaceState,
  dt: number,
): void {
  const { state, fractions, stride } = cells;
  const { first, end, ahead } = pipe;
  const half = (0.5 * dt) / pipe.spacing;
  const plane = 2 * ahead;
  for (let k = 0; k < carried; k++) {
    const cellShift = k * stride;
    const sideShift = k * sides.stride;
    const planeShift = k * planes.count;
    let before = 2 * (fractions[cellShift + first]! - planes.planeFractions[planeShift + plane]!);
    for (let i = first; i < end; i++) {
      const y = fractions[cellShift + i]!;
      let slope: number;
      if (i === end - 1) {
        slope = limitedAtEnd(2 * (planes.planeFractions[planeShift + plane + 1]! - y), before);
      } else {
        const after = fractions[cellShift + i + 1]! - y;
        slope = i === first ? limitedAtEnd(before, after) : limited(before, after);
        before = after;
      }
      const mid = y - half * state[STATE * i + 1]! * slope;
      const a = sideShift + 2 * (i + ahead) + 1;
      sides.fractions[a] = mid - 0.5 * slope;
      sides.fractions[a + 1] = mid + 0.5 * slope;
    }
  }
}
