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

/**
 * Twice the gentler of both sides, or the slope across, whichever is least; 0 at an extremum. Differences per cell. Every operation
 * is done whatever the flow: what a resting pipe never did, the compiler would have to learn once more when the first wave comes, and
 * it may settle for slower code then.
 */
function limited(before: number, after: number): number {
  const gentler = Math.min(Math.abs(before), Math.abs(after));
  const most = 2 * (before * after > 0 ? gentler : 0);
  return Math.max(-most, Math.min(most, 0.5 * (before + after)));
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
 * faces inside, the start side of its finish face. Walls are left to `predictWalls`. `flat`: first order, for what second order fails at.
 */
export function predict(
  grid: Grid,
  pipe: PipeGrid,
  cells: CellState,
  planes: Planes,
  sides: FaceState,
  dt: number,
  flat: boolean,
): void {
  if (flat || pipe.end - pipe.first === 1) {
    predictFlat(pipe, cells, sides);
    return;
  }
  predictAtEnds(grid, pipe, cells, planes, sides, dt);
  if (pipe.straight) predictStraight(pipe, cells, sides, dt);
  else predictTapered(grid, pipe, cells, sides, dt);
}

/**
 * Cells with a cell on either side, in a bore that stays as it is. Written out whole: in pieces, the compiler puts them together or not as
 * it happens to go, and then it takes half as long again.
 */
function predictStraight(
  { first, end, ahead, spacing }: PipeGrid,
  { state }: CellState,
  sides: FaceState,
  dt: number,
): void {
  const out = sides.state;
  const half = (0.5 * dt) / spacing;
  const last = end - 1;
  let rho = state[STATE * (first + 1)]!;
  let u = state[STATE * (first + 1) + 1]!;
  let p = state[STATE * (first + 1) + 2]!;
  let dRho = rho - state[STATE * first]!;
  let dU = u - state[STATE * first + 1]!;
  let dP = p - state[STATE * first + 2]!;
  for (let i = first + 1; i < last; i++) {
    const next = STATE * (i + 1);
    const stiff = state[next - 1]! * p;
    const nextRho = state[next]!;
    const nextU = state[next + 1]!;
    const nextP = state[next + 2]!;
    const afterRho = nextRho - rho;
    const afterU = nextU - u;
    const afterP = nextP - p;
    const sRho = limited(dRho, afterRho);
    const sU = limited(dU, afterU);
    const sP = limited(dP, afterP);
    const midRho = rho - half * (u * sRho + rho * sU);
    const midU = u - half * (u * sU + sP / rho);
    const midP = p - half * (u * sP + stiff * sU);
    const halfRho = 0.5 * sRho;
    const halfU = 0.5 * sU;
    const halfP = 0.5 * sP;
    const at = SIDE * (2 * (i + ahead) + 1);
    const atU = at + 1;
    const atP = at + 2;
    const beyond = at + SIDE;
    const beyondU = beyond + 1;
    const beyondP = beyond + 2;
    if (midRho > Math.abs(halfRho) && midP > Math.abs(halfP)) {
      out[at] = midRho - halfRho;
      out[atU] = midU - halfU;
      out[atP] = midP - halfP;
      out[beyond] = midRho + halfRho;
      out[beyondU] = midU + halfU;
      out[beyondP] = midP + halfP;
    } else {
      // A line that would leave less than nothing at a face is not drawn.
      leaveFlat(out, at, rho, u, p);
    }
    dRho = afterRho;
    dU = afterU;
    dP = afterP;
    rho = nextRho;
    u = nextU;
    p = nextP;
  }
}

/**
 * The same where the bore changes, written out whole too. The line is drawn through area × velocity: that is what a slow stream
 * keeps through a taper, so both sides of a face see one velocity there however steep the taper, where lines through velocity itself would leave a jump
 * that sends out waves.
 */
function predictTapered(grid: Grid, pipe: PipeGrid, { state }: CellState, sides: FaceState, dt: number): void {
  const { middle, area } = grid;
  const out = sides.state;
  const { first, end, ahead, spacing } = pipe;
  const half = (0.5 * dt) / spacing;
  const last = end - 1;
  let rho = state[STATE * (first + 1)]!;
  let u = state[STATE * (first + 1) + 1]!;
  let p = state[STATE * (first + 1) + 2]!;
  let flow = middle[first + 1]! * u;
  let dRho = rho - state[STATE * first]!;
  let dFlow = flow - middle[first]! * state[STATE * first + 1]!;
  let dP = p - state[STATE * first + 2]!;
  for (let i = first + 1; i < last; i++) {
    const next = STATE * (i + 1);
    const stiff = state[next - 1]! * p;
    const nextRho = state[next]!;
    const nextU = state[next + 1]!;
    const nextP = state[next + 2]!;
    const nextFlow = middle[i + 1]! * nextU;
    const afterRho = nextRho - rho;
    const afterFlow = nextFlow - flow;
    const afterP = nextP - p;
    const sRho = limited(dRho, afterRho);
    const sFlow = limited(dFlow, afterFlow);
    const sP = limited(dP, afterP);
    const f = i + ahead;
    const per = 1 / middle[i]!;
    const before = area[f]!;
    const after = area[f + 1]!;
    const spread = half * sFlow * per;
    const midRho = rho - half * u * sRho - rho * spread;
    const midU = u - u * (spread - half * u * (after - before) * per) - (half * sP) / rho;
    const midP = p - half * u * sP - stiff * spread;
    const halfRho = 0.5 * sRho;
    const halfFlow = 0.5 * sFlow;
    const halfP = 0.5 * sP;
    const at = SIDE * (2 * f + 1);
    const atU = at + 1;
    const atP = at + 2;
    const beyond = at + SIDE;
    const beyondU = beyond + 1;
    const beyondP = beyond + 2;
    if (midRho > Math.abs(halfRho) && midP > Math.abs(halfP)) {
      const midFlow = middle[i]! * midU;
      const most = Math.abs(midU) + FASTER * Math.sqrt(stiff / rho);
      out[at] = midRho - halfRho;
      out[atU] = Math.max(-most, Math.min(most, (midFlow - halfFlow) / before));
      out[atP] = midP - halfP;
      out[beyond] = midRho + halfRho;
      out[beyondU] = Math.max(-most, Math.min(most, (midFlow + halfFlow) / after));
      out[beyondP] = midP + halfP;
    } else {
      leaveFlat(out, at, rho, u, p);
    }
    dRho = afterRho;
    dFlow = afterFlow;
    dP = afterP;
    rho = nextRho;
    u = nextU;
    p = nextP;
    flow = nextFlow;
  }
}

/** Both sides of a cell as the cell is. */
function leaveFlat(out: Float64Array, at: number, rho: number, u: number, p: number): void {
  out[at] = rho;
  out[at + 1] = u;
  out[at + 2] = p;
  out[at + SIDE] = rho;
  out[at + SIDE + 1] = u;
  out[at + SIDE + 2] = p;
}

/** The first and the last cell, which have a plane on one side. */
function predictAtEnds(
  grid: Grid,
  pipe: PipeGrid,
  { state }: CellState,
  planes: Planes,
  sides: FaceState,
  dt: number,
): void {
  const { middle, area } = grid;
  const half = (0.5 * dt) / pipe.spacing;
  for (let side = 0; side < 2; side++) {
    const plane = 2 * pipe.ahead + side;
    // +1 where x leads out of the pipe.
    const sign = side === 0 ? -1 : 1;
    const i = side === 0 ? pipe.first : pipe.end - 1;
    const s = STATE * i;
    const n = s - sign * STATE;
    const rho = state[s]!;
    const u = state[s + 1]!;
    const p = state[s + 2]!;
    const flow = middle[i]! * u;
    // Differences per cell in the direction of x; the plane is half a cell away.
    const sRho = limitedAtEnd(2 * sign * (planes.lastDensity[plane]! - rho), sign * (rho - state[n]!));
    const sFlow = limitedAtEnd(
      2 * (planes.area[plane]! * planes.lastVelocity[plane]! - sign * flow),
      sign * (flow - middle[i - sign]! * state[n + 1]!),
    );
    const sP = limitedAtEnd(2 * sign * (planes.lastPressure[plane]! - p), sign * (p - state[n + 2]!));
    const stiff = state[s + 3]! * p;
    const f = i + pipe.ahead;
    const [a, b] = [area[f]!, area[f + 1]!];
    layTapered(sides.state, SIDE * (2 * f + 1), half, rho, u, p, stiff, sRho, sFlow, sP, middle[i]!, a, b);
  }
}

/** First order: each cell as it is. A pipe of one cell has no slope to tell. */
function predictFlat({ first, end, ahead }: PipeGrid, { state }: CellState, sides: FaceState): void {
  for (let i = first; i < end; i++) {
    const s = STATE * i;
    const at = SIDE * (2 * (i + ahead) + 1);
    write(sides.state, at, state[s]!, state[s + 1]!, state[s + 2]!);
    write(sides.state, at + SIDE, state[s]!, state[s + 1]!, state[s + 2]!);
  }
}

/**
 * How much faster than in the middle of its cell a stream may be at a face, in speeds of sound. What a taper would ask for beyond that
 * no gas does at the pressure of the cell: near choking the line would leave a face with energy from nowhere.
 */
const FASTER = 0.2;

/**
 * The same for one cell, as the cells at the ends have it. `stiff`: γp; `sFlow`: slope of area × velocity; areas in
 * the middle and at both faces.
 */
function layTapered(
  out: Float64Array,
  at: number,
  half: number,
  rho: number,
  u: number,
  p: number,
  stiff: number,
  sRho: number,
  sFlow: number,
  sP: number,
  middle: number,
  before: number,
  after: number,
): void {
  const per = 1 / middle;
  // Of area × velocity, so of what widens the stream: d(Au)/dx / A.
  const spread = half * sFlow * per;
  const midRho = rho - half * u * sRho - rho * spread;
  const midU = u - u * (spread - half * u * (after - before) * per) - (half * sP) / rho;
  const midP = p - half * u * sP - stiff * spread;
  const halfRho = 0.5 * sRho;
  const halfFlow = 0.5 * sFlow;
  const halfP = 0.5 * sP;
  if (midRho > Math.abs(halfRho) && midP > Math.abs(halfP)) {
    const flow = middle * midU;
    const most = Math.abs(midU) + FASTER * Math.sqrt(stiff / rho);
    const one = (flow - halfFlow) / before;
    const other = (flow + halfFlow) / after;
    write(out, at, midRho - halfRho, Math.max(-most, Math.min(most, one)), midP - halfP);
    write(out, at + SIDE, midRho + halfRho, Math.max(-most, Math.min(most, other)), midP + halfP);
  } else {
    write(out, at, rho, u, p);
    write(out, at + SIDE, rho, u, p);
  }
}

function write(out: Float64Array, at: number, rho: number, u: number, p: number): void {
  out[at] = rho;
  out[at + 1] = u;
  out[at + 2] = p;
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
    let before = 2 * (fractions[cellShift + first]! - planes.lastFractions[planeShift + plane]!);
    for (let i = first; i < end; i++) {
      const y = fractions[cellShift + i]!;
      let slope: number;
      if (i === end - 1) {
        slope = limitedAtEnd(2 * (planes.lastFractions[planeShift + plane + 1]! - y), before);
      } else {
        const after = fractions[cellShift + i + 1]! - y;
        slope = i === first ? limitedAtEnd(before, after) : limited(before, after);
        before = after;
      }
      const mid = y - half * state[STATE * i + 1]! * slope;
      const a = sideShift + 2 * (i + ahead) + 1;
      // Beside a plane that hands back what was led there, a line may lead beyond all or nothing.
      sides.fractions[a] = Math.max(0, Math.min(1, mid - 0.5 * slope));
      sides.fractions[a + 1] = Math.max(0, Math.min(1, mid + 0.5 * slope));
    }
  }
}
