/** What a run of a rig answers: probes over time, the last instant, a picture of the waves, and what was kept. SI units. */
import type { Failure } from './scheme/step';

/** Flat arrays of one length, one entry for each instant or each cell. Velocity is positive from start to finish. */
export type GasColumns = {
  readonly pressure: Float64Array;
  readonly velocity: Float64Array;
  readonly temperature: Float64Array;
  readonly density: Float64Array;
  /** Mass fraction of each component after the first, in the order of the gas. Empty for one gas. */
  readonly fractions: readonly Float64Array[];
};

export type ProbeSeries = GasColumns & { readonly pipe: string; readonly x: number };

export type PipeProfile = GasColumns & {
  readonly pipe: string;
  /** Cell centres, m from the pipe's start. An end correction's cells lie outside 0 … length. */
  readonly x: Float64Array;
};

/** Pressure, velocity and temperature of every cell at even instants, row after row: [instant × cells + cell]. */
export type PipePicture = {
  readonly pipe: string;
  readonly x: Float64Array;
  readonly pressure: Float32Array;
  readonly velocity: Float32Array;
  readonly temperature: Float32Array;
};

/** kg or J. `drift` is final − initial + left − from walls, relative to the initial. */
export type Account = {
  readonly initial: number;
  readonly final: number;
  /** Net, through open and through ends. */
  readonly left: number;
  /** From the walls; 0 for mass. */
  readonly fromWalls: number;
  readonly drift: number;
};

/** Where the gas was furthest beyond what the table of heats holds for: which cell's centre, when, how hot or cold. */
export type BeyondTable = {
  readonly pipe: string;
  readonly x: number;
  readonly time: number;
  readonly temperature: number;
  /** When any gas was first seen so. */
  readonly since: number;
};

export type RigRun = {
  /** Names of the gas's components; one entry for one gas. */
  readonly components: readonly string[];
  /** Instants of the probes' rows, s. */
  readonly times: Float64Array;
  readonly probes: readonly ProbeSeries[];
  /** The last instant of every pipe. */
  readonly profile: readonly PipeProfile[];
  /** Where asked for. */
  readonly picture: { readonly times: Float64Array; readonly pipes: readonly PipePicture[] } | null;
  readonly mass: Account;
  readonly energy: Account;
  /** Reached: less than the duration where the run was ended early. */
  readonly time: number;
  readonly steps: number;
  readonly cellUpdates: number;
  /** Steps that failed and were done again, smaller. */
  readonly retries: number;
  /** Of mixtures, which have a table; null or absent: nowhere, as far as was looked: every 16 steps and at the last. */
  readonly beyond?: BeyondTable | null;
};

export type RunOptions = {
  /** Rows of the x–t picture, spread evenly over the duration; 0 or absent: none. */
  readonly pictureRows?: number;
};

/**
 * A run that is under way. `advance` does at most so many steps and says whether all is done; what it has so far can be had at any
 * time.
 */
export type Running = {
  readonly time: number;
  readonly duration: number;
  readonly steps: number;
  /** Throws `FlowStopped` where a step cannot be done however small. */
  advance(steps: number): boolean;
  /** In arrays of its own, which the run does not touch again. */
  result(): RigRun;
};

/** What is told of a step that cannot be done. */
export const FOUND: Readonly<Record<Failure, string>> = {
  state: 'density or pressure came out as none',
  wave: 'a wave grew faster than any step allows',
  vessel: 'more left the vessel there than it held',
};

const RIG_REMEDY = 'Give that pipe more cells, a lower "courant", or a state that is less extreme.';
export const ENGINE_REMEDY = 'Look at the sizes of that pipe and of what it joins, or ask for shorter cells.';

/** A step could not be done however small: when, where and what was found there. */
export class FlowStopped extends Error {
  constructor(
    readonly time: number,
    readonly pipe: string,
    readonly cell: number,
    readonly x: number,
    found: string,
    remedy = RIG_REMEDY,
  ) {
    super(
      [
        `The flow could not be followed beyond ${time.toPrecision(6)} s: ${found} in cell ${cell + 1} of pipe "${pipe}",`,
        `${x.toPrecision(4)} m from its start. ${remedy}`,
      ].join(' '),
    );
    this.name = 'FlowStopped';
  }
}
