/** What the walls do to the gas, by cell: friction factors, and how much of the friction's rate is heat. SI units. */
import type { CellState } from '../equations/gas';
import type { PipeGrid } from './grid';

export type Walls = {
  /** Fanning; 0: smooth walls that neither brake nor heat. */
  readonly factor: Float64Array;
  /** 1/m */
  readonly perDiameter: Float64Array;
  /** K; without meaning where `heatShare` is 0. */
  readonly wallTemperature: Float64Array;
  /** Pr^(−2/3) by the Reynolds–Colburn analogy; 0 for adiabatic walls. */
  readonly heatShare: Float64Array;
  /** One for each pipe: brings `factor` up to date; null where it is constant. */
  readonly laws: readonly (FactorLaw | null)[];
};

export type FactorLaw = (pipe: PipeGrid, cells: CellState, factor: Float64Array) => void;
