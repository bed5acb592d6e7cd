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

  /** States at faces `from` to before `to`: density, pressure and fractions → internal energy per m³ and ratio of heats. */
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

/** All cells of a network, pipe after pipe. */
export type CellState = {
  readonly density: Float64Array;
  /** ρu */
  readonly momentum: Float64Array;
  /** Internal and kinetic, J/m³. */
  readonly energy: Float64Array;
  /** ρ times each carried fraction. */
  readonly partial: Float64Array;
  readonly velocity: Float64Array;
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  readonly gamma: Float64Array;
  readonly fractions: Float64Array;
  /** Entries from one component to the next in `partial` and `fractions`. */
  readonly stride: number;
};

export type FaceState = {
  readonly density: Float64Array;
  readonly velocity: Float64Array;
  readonly pressure: Float64Array;
  readonly fractions: Float64Array;
  /** Internal energy, J/m³. */
  readonly internal: Float64Array;
  readonly gamma: Float64Array;
  /** A first guess where the gas needs one, K. */
  readonly temperature: Float64Array;
  readonly stride: number;
};
