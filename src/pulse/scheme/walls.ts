/**
 * What walls do to the gas beside carrying it: they brake it, and by the Reynolds–Colburn analogy they warm or cool it in
 * proportion. Two passes after those of the smooth duct, taken only where walls do either. SI units.
 */
import {
  type CellState,
  CONSERVED,
  type FaceState,
  GAMMA,
  PRESSURE,
  SIDE,
  SIDE_GAMMA,
  STATE,
  VELOCITY,
} from '../equations/gas';
import type { Grid, PipeGrid } from './grid';

export type Walls = {
  /** Fanning's factor, by cell. */
  readonly factor: Float64Array;
  /** 1/m, by cell. */
  readonly perDiameter: Float64Array;
  /** K, by cell; without meaning where `heatShare` is 0. */
  readonly wallTemperature: Float64Array;
  /** Pr^(−2/3), by cell; 0 for adiabatic walls. */
  readonly heatShare: Float64Array;
  /** By pipe: what keeps its factor up to date; null where it is constant. */
  readonly laws: readonly (FactorLaw | null)[];
  /** By pipe: false where walls are smooth. */
  readonly drag: readonly boolean[];
};

export type FactorLaw = (pipe: PipeGrid, cells: CellState, factor: Float64Array) => void;

/** The share of its momentum that a stream of diameter D loses in a second: wall shear f ½ρu², on 4/D of wall for each m³. 1/s. */
const rateOf = (factor: number, speed: number, perDiameter: number): number =>
  2 * factor * Math.abs(speed) * perDiameter;

/** A share of what is lacking: as it is where small, to second order, and never more than all however long the step. */
const bounded = (share: number): number => share / Math.sqrt(1 + share * share);

/** Adds to the states at half a step beside a pipe's faces what its walls have done by then. */
export function predictWalls(pipe: PipeGrid, cells: CellState, walls: Walls, sides: FaceState, dt: number): void {
  const { factor, perDiameter, wallTemperature, heatShare } = walls;
  const { state, temperature } = cells;
  const out = sides.state;
  for (let i = pipe.first; i < pipe.end; i++) {
    const s = STATE * i;
    const u = state[s + VELOCITY]!;
    const p = state[s + PRESSURE]!;
    const gamma = state[s + GAMMA]!;
    const rate = rateOf(factor[i]!, u, perDiameter[i]!);
    const dU = -Math.min(0.5 * dt * rate, 1) * u;
    let dP = -(gamma - 1) * state[s]! * u * dU;
    if (heatShare[i]! > 0) {
      const share = 0.5 * dt * heatShare[i]! * rate * gamma;
      dP += bounded(share) * p * (wallTemperature[i]! / temperature[i]! - 1);
    }
    const a = SIDE * (2 * (i + pipe.ahead) + 1);
    out[a + VELOCITY]! += dU;
    out[a + SIDE + VELOCITY]! += dU;
    if (out[a + PRESSURE]! + dP > 0 && out[a + SIDE + PRESSURE]! + dP > 0) {
      out[a + PRESSURE]! += dP;
      out[a + SIDE + PRESSURE]! += dP;
    }
  }
}

/** What the walls do in the whole step, at the flow of its middle, to the cells after it. Answers the heat they gave, J. */
export function brakeAndHeat(
  grid: Grid,
  pipe: PipeGrid,
  from: CellState,
  to: CellState,
  sides: FaceState,
  walls: Walls,
  dt: number,
): number {
  const { factor, perDiameter, wallTemperature, heatShare } = walls;
  const { state } = sides;
  const after = to.conserved;
  let heated = 0;
  for (let i = pipe.first; i < pipe.end; i++) {
    const a = SIDE * (2 * (i + pipe.ahead) + 1);
    const rate = rateOf(factor[i]!, 0.5 * (state[a + VELOCITY]! + state[a + SIDE + VELOCITY]!), perDiameter[i]!);
    // Half by where the stream was and half by where it goes: exact to second order.
    const brake = Math.min(0.5 * dt * rate, 1);
    const c = CONSERVED * i + 1;
    after[c] = (after[c]! - brake * from.conserved[c]!) / (1 + brake);
    if (!(heatShare[i]! > 0)) continue;
    const midRho = 0.5 * (state[a]! + state[a + SIDE]!);
    const midP = 0.5 * (state[a + PRESSURE]! + state[a + SIDE + PRESSURE]!);
    const gamma = 0.5 * (state[a + SIDE_GAMMA]! + state[a + SIDE + SIDE_GAMMA]!);
    const before = STATE * i;
    // The pressure that the gas would have at the wall's temperature: by R as the cell had it, p / (ρT).
    const constant = from.state[before + PRESSURE]! / (from.state[before]! * from.temperature[i]!);
    const lacking = constant * wallTemperature[i]! * midRho - midP;
    const share = dt * heatShare[i]! * rate * gamma;
    const heat = (bounded(share) * lacking) / (gamma - 1);
    after[c + 1]! += heat;
    heated += heat * grid.volume[i]!;
  }
  return heated;
}
