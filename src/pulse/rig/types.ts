/**
 * The rig document: a network of pipes and ends on which the gas-flow solver runs without an engine. SI units: m, m², m³, s, Pa,
 * K, kg/m³, m/s. What is optional below and not in the fixed contract is marked; without it a rig means what the contract says.
 */

export type PipeSide = 'start' | 'finish';

/** Which end of which pipe. */
export type PipeEnd = readonly [pipe: string, side: PipeSide];

/** One perfect gas. */
export type PerfectGasInput = { readonly gamma: number; readonly gasConstant: number };

/** Beyond the contract: several substances of our table, mixed by mass, with properties that follow temperature. */
export type MixtureInput = { readonly components: readonly string[] };

export type GasInput = PerfectGasInput | MixtureInput;

/** Mass fractions by component. What is not named is 0; the first component makes up the rest. */
export type Fractions = Readonly<Record<string, number>>;

export type Ambient = { readonly pressure: number; readonly temperature: number; readonly fractions?: Fractions };

export type InitialState = {
  readonly from: number;
  readonly to: number;
  readonly pressure: number;
  readonly temperature: number;
  /** Positive from start to finish. */
  readonly velocity: number;
  readonly fractions?: Fractions;
};

/** A constant Fanning factor, or a roughness height: Haaland's factor with the viscosity of air by Sutherland's formula. */
export type Friction = number | { readonly roughness: number };

export type RigPipe = {
  readonly id: string;
  readonly length: number;
  readonly cells: number;
  /** Piecewise linear: [x, diameter], x rising from 0 to the length. */
  readonly diameter: readonly (readonly [x: number, diameter: number])[];
  readonly friction: Friction;
  /** K; null: adiabatic. */
  readonly wallTemperature: number | null;
  /** In the order of the pipe, from 0 to the length. */
  readonly initial: readonly InitialState[];
};

/** [time, geometric area]: linear between, the first value holds before and the last one after. Beyond the contract: one number. */
export type AreaLaw = number | readonly (readonly [time: number, area: number])[];

export type ClosedEnd = { readonly kind: 'closed'; readonly at: PipeEnd };
export type ThroughEnd = { readonly kind: 'through'; readonly at: PipeEnd };

export type OpenEnd = {
  readonly kind: 'open';
  readonly at: PipeEnd;
  /**
   * Beyond the contract: what the gas outside adds to the length, as radii of the opening, or for a plain and a flanged pipe.
   * Absent: none.
   */
  readonly endCorrection?: number | 'unflanged' | 'flanged';
  /** Beyond the contract: a plate with a hole over the opening. Absent: the full bore. */
  readonly area?: AreaLaw;
  readonly dischargeCoefficient?: number;
};

export type JunctionEnd = {
  readonly kind: 'junction';
  readonly at: readonly PipeEnd[];
  /** `pressure-loss`, beyond the contract: momentum that is not carried over is lost, by the pipes' directions. */
  readonly model: 'equal-pressure' | 'pressure-loss';
  /** Which way each pipe leads away from the junction, in one plane: degrees. For `pressure-loss`, this or `directions`. */
  readonly angles?: readonly number[];
  /** The same in space; of any length but 0. */
  readonly directions?: readonly (readonly [number, number, number])[];
};

/** Beyond the contract: a plate with a hole between two pipes. */
export type RestrictionEnd = {
  readonly kind: 'restriction';
  readonly at: readonly [PipeEnd, PipeEnd];
  readonly area: AreaLaw;
  readonly dischargeCoefficient: number;
};

export type VesselEnd = {
  readonly kind: 'vessel';
  readonly at: PipeEnd;
  readonly volume: number;
  readonly pressure: number;
  readonly temperature: number;
  readonly fractions?: Fractions;
  readonly area: AreaLaw;
  readonly dischargeCoefficient: number;
};

export type RigEnd = ClosedEnd | ThroughEnd | OpenEnd | JunctionEnd | RestrictionEnd | VesselEnd;

export type Probe = { readonly pipe: string; readonly x: number };

export type Rig = {
  readonly format: 'evenrun-rig';
  readonly version: 1;
  readonly gas: GasInput;
  readonly ambient: Ambient;
  readonly pipes: readonly RigPipe[];
  readonly ends: readonly RigEnd[];
  readonly duration: number;
  /** Share of the longest step that the fastest wave allows, above 0 to 1. */
  readonly courant: number;
  readonly probes: readonly Probe[];
  /** Output step, s; 0: no rows of probes. */
  readonly sample: number;
  readonly profile: boolean;
};
