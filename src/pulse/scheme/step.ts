/**
 * One step of a whole network in time: predict, pass, add up, and look whether what came out is a state of a gas. A step that
 * fails is done again at half its length, or as much as a wave that was too fast for it allows; what stood before is kept until a
 * step stands. Nothing is allocated here.
 */
import { type End, keepPlanes, type Planes } from '../ends/planes';
import { type CellState, type FaceState, type Gas, SIDE, SIDE_GAMMA, STATE } from '../equations/gas';
import { type Fluxes, fluxes, PASSED } from '../fluxes/fluxes';
import type { Grid } from './grid';
import { predict, predictFractions } from './predict';
import { cellState, faceState } from './state';
import { update, updatePartial } from './update';
import { brakeAndHeat, predictWalls, type Walls } from './walls';

/** A step is given up once it is shorter than this share of what was asked. */
const SHORTEST = 1e-6;
/** After so many failures in a row the step is tried without slopes: near a void these may fail however short it is. */
const FLAT_AFTER = 4;

/** What joins the parts: a flux between two states, and how the carried components go with it. */
export type FluxLaw = {
  readonly pass: (sides: FaceState, out: Fluxes, from: number, to: number) => number;
  readonly carry: (sides: FaceState, out: Fluxes, from: number, to: number, carried: number) => void;
};

export type Network = {
  readonly gas: Gas;
  readonly grid: Grid;
  readonly planes: Planes;
  readonly ends: readonly End[];
  readonly walls: Walls;
  readonly flux: FluxLaw;
};

/** Where a network stands, and how it came there. */
export type Stand = {
  /** What holds now: a decoded state. */
  cells: CellState;
  /** Room for the next one. */
  next: CellState;
  readonly sides: FaceState;
  readonly passed: Fluxes;
  /** What has passed each plane since the start, positive out of its pipe: kg and J. */
  readonly massOut: Float64Array;
  readonly energyOut: Float64Array;
  /** From all walls since the start, J. */
  heated: number;
  retries: number;
  /** What share of a step that failed is tried next. */
  shorter: number;
  /** The cell at which the last attempt failed, or −1; and why. */
  failed: number;
  why: Failure;
};

/** No gas any more in the cell; a wave faster than the step allows; a vessel there emptied beyond nothing. */
export type Failure = 'state' | 'wave' | 'vessel';

export function standOf({ grid, gas }: Network): Stand {
  return {
    cells: cellState(grid.cells, gas.carried),
    next: cellState(grid.cells, gas.carried),
    sides: faceState(grid.faces, gas.carried),
    passed: fluxes(grid.faces, gas.carried),
    massOut: new Float64Array(2 * grid.pipes.length),
    energyOut: new Float64Array(2 * grid.pipes.length),
    heated: 0,
    retries: 0,
    shorter: 0.5,
    failed: -1,
    why: 'state',
  };
}

/** The longest step that the fastest wave and the ends allow, s. */
export function longestStep({ grid, ends }: Network, { cells }: Stand): number {
  let longest = Number.POSITIVE_INFINITY;
  for (let k = 0; k < grid.pipes.length; k++) {
    const pipe = grid.pipes[k]!;
    longest = Math.min(longest, pipe.spacing / fastestWave(cells, pipe.first, pipe.end));
  }
  for (let k = 0; k < ends.length; k++) longest = Math.min(longest, ends[k]!.longestStep());
  return longest;
}

function fastestWave({ state }: CellState, from: number, to: number): number {
  let fastest = 0;
  for (let s = STATE * from; s < STATE * to; s += STATE) {
    const speed = Math.abs(state[s + 1]!) + Math.sqrt((state[s + 3]! * state[s + 2]!) / state[s]!);
    if (speed > fastest) fastest = speed;
  }
  return fastest;
}

/** Goes on from `time` by at most `dt`. Answers the step taken, or 0 where none stands: `stand.failed` then names the cell. */
export function advance(network: Network, stand: Stand, time: number, dt: number): number {
  const shortest = SHORTEST * dt;
  for (let failures = 0; dt >= shortest; failures++) {
    stand.shorter = 0.5;
    if (attempt(network, stand, time, dt, failures >= FLAT_AFTER)) return dt;
    stand.retries++;
    dt *= stand.shorter;
  }
  return 0;
}

function attempt(network: Network, stand: Stand, time: number, dt: number, flat: boolean): boolean {
  const { gas, grid, planes, ends, walls, flux } = network;
  const { cells, next, sides, passed } = stand;
  const { pipes } = grid;
  const carried = gas.carried;
  for (let k = 0; k < pipes.length; k++) {
    const pipe = pipes[k]!;
    const from = pipe.first + k;
    const to = pipe.end + k;
    predict(grid, pipe, cells, planes, sides, dt, flat);
    if (walls.drag[k]) predictWalls(pipe, cells, walls, sides, dt);
    if (carried > 0) predictFractions(pipe, cells, planes, carried, sides, dt);
    gas.faces(sides, 2 * from + 1, 2 * to + 1);
    const fastest = flux.pass(sides, passed, from + 1, to);
    // A wave born within the step may be faster than any before it.
    if (!(fastest * dt <= pipe.spacing)) {
      fails(stand, pipe.first, 'wave');
      stand.shorter = Math.max(0.5, (0.98 * pipe.spacing) / (fastest * dt));
      return false;
    }
    if (carried > 0) flux.carry(sides, passed, from + 1, to, carried);
    offer(planes, 2 * k, sides, 2 * from + 1, -1, carried);
    offer(planes, 2 * k + 1, sides, 2 * to, 1, carried);
  }
  for (let k = 0; k < ends.length; k++) ends[k]!.pass(time, dt);
  let heated = 0;
  for (let k = 0; k < pipes.length; k++) {
    const pipe = pipes[k]!;
    take(planes, 2 * k, passed, pipe.first + k, -1, carried);
    take(planes, 2 * k + 1, passed, pipe.end + k, 1, carried);
    update(grid, pipe, cells, next, sides, passed, dt);
    if (walls.drag[k]) heated += brakeAndHeat(grid, pipe, cells, next, sides, walls, dt);
    if (carried > 0) updatePartial(grid, pipe, cells, next, passed, carried, dt);
  }
  next.temperature.set(cells.temperature);
  const wrong = gas.decode(next, 0, grid.cells);
  if (wrong >= 0) {
    fails(stand, wrong, 'state');
    return false;
  }
  for (let k = 0; k < ends.length; k++) {
    if (ends[k]!.holds(dt)) continue;
    const plane = ends[k]!.planes[0]!;
    const pipe = pipes[plane >> 1]!;
    fails(stand, plane % 2 === 0 ? pipe.first : pipe.end - 1, 'vessel');
    return false;
  }
  stand.failed = -1;
  stand.heated += heated;
  stand.cells = next;
  stand.next = cells;
  settle(network, stand, dt);
  return true;
}

function fails(stand: Stand, cell: number, why: Failure): void {
  stand.failed = cell;
  stand.why = why;
}

/** The step stands: ends take in what passed, walls look at the new flow, and what left is counted. */
function settle({ grid, planes, ends, walls }: Network, stand: Stand, dt: number): void {
  for (let k = 0; k < ends.length; k++) ends[k]!.take(dt);
  keepPlanes(planes);
  for (let q = 0; q < planes.count; q++) {
    const share = dt * planes.area[q]!;
    stand.massOut[q]! += share * planes.massFlux[q]!;
    stand.energyOut[q]! += share * planes.energyFlux[q]!;
  }
  for (let k = 0; k < grid.pipes.length; k++) {
    const law = walls.laws[k]!;
    if (law !== null) law(grid.pipes[k]!, stand.cells, walls.factor);
  }
}

/** What lies just inside a plane is handed to its end. `sign`: +1 where x leads out of the pipe. */
function offer(planes: Planes, plane: number, sides: FaceState, place: number, sign: number, carried: number): void {
  const s = SIDE * place;
  planes.density[plane] = sides.state[s]!;
  planes.velocity[plane] = sign * sides.state[s + 1]!;
  planes.pressure[plane] = sides.state[s + 2]!;
  planes.gamma[plane] = sides.state[s + SIDE_GAMMA]!;
  for (let k = 0; k < carried; k++)
    planes.fractions[k * planes.count + plane] = sides.fractions[k * sides.stride + place]!;
}

/** What an end lets through becomes the flux of its face. */
function take(planes: Planes, plane: number, out: Fluxes, face: number, sign: number, carried: number): void {
  const f = PASSED * face;
  out.passed[f] = sign * planes.massFlux[plane]!;
  out.passed[f + 1] = planes.momentumFlux[plane]!;
  out.passed[f + 2] = sign * planes.energyFlux[plane]!;
  const faces = out.passed.length / PASSED;
  for (let k = 0; k < carried; k++)
    out.partial[k * faces + face] = sign * planes.partialFlux[k * planes.count + plane]!;
}
