/**
 * What the scheme and the ends ask of a gas. Pure functions of state: no grid, no time. SI units; fractions are mass fractions of
 * the carried components (all but the first), entry k of place i at `fractions[k * stride + i]`. Internal energy and enthalpy are
 * sensible, 0 at 0 K, so that internal energy is positive wherever temperature is.
 */
export interface Gas {
  /** Names of all components, the one that makes up the rest first. */
  readonly components: readonly string[];
  /** components.length − 1 */
  readonly carried: number;

  /**
   * Cells from `from` to before `to`: conserved quantities per m³ → velocity, pressure, temperature, ratio of heats, fractions.
   * `temperature` holds a first guess (the last one) where the gas needs one. Answers the first cell whose density or internal
   * energy is not positive and finite, or −1.
   */
  decode(cells: CellState, from: number, to: number): number;

  /** States beside faces, places `from` to before `to`: density, pressure and fractions → internal energy per m³ and ratio of heats. */
  faces(sides: FaceState, from: number, to: number): void;

  /** J/(kg K) of the mixture at one place. */
  gasConstant(fractions: Float64Array, at: number, stride: number): number;
  /** cp / cv at one place and temperature. */
  gamma(temperature: number, fractions: Float64Array, at: number, stride: number): number;
  /** J/kg. */
  enthalpy(temperature: number, fractions: Float64Array, at: number, stride: number): number;
  /** K; the inverse of `enthalpy`. */
  temperatureOfEnthalpy(enthalpy: number, fractions: Float64Array, at: number, stride: number): number;
}

/**
 * All cells of a network, pipe after pipe. What belongs to a cell lies side by side in one array, because the loops that run over
 * cells take half the time on two arrays of what they take on a dozen.
 */
export type CellState = {
  /** Three entries a cell: density, momentum ρu, energy (internal and kinetic), per m³. */
  readonly conserved: Float64Array;
  /** ρ times each carried fraction, entry k of cell i at k * stride + i. */
  readonly partial: Float64Array;
  /** Four entries a cell: density, velocity, pressure, ratio of heats. */
  readonly state: Float64Array;
  /** K, by cell. */
  readonly temperature: Float64Array;
  readonly fractions: Float64Array;
  /** Entries from one component to the next in `partial` and `fractions`. */
  readonly stride: number;
};

/** Entries of a cell, and where each is. */
export const CONSERVED = 3;
export const STATE = 4;
export const DENSITY = 0;
export const VELOCITY = 1;
export const PRESSURE = 2;
export const GAMMA = 3;

/** Both sides of all faces: what lies at the start side of face f is place 2f, what lies at its finish side place 2f + 1. */
export type FaceState = {
  /** Five entries a place: density, velocity, pressure, internal energy per m³, ratio of heats. */
  readonly state: Float64Array;
  /** By place, as in cells. */
  readonly fractions: Float64Array;
  readonly stride: number;
};

/** Entries of a place beside a face; the first three are where they are in cells. */
export const SIDE = 5;
export const INTERNAL = 3;
export const SIDE_GAMMA = 4;
