/** One speed of an engine on a gas path, to be followed by whoever has a core free: plain data. */
import type { EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';
import type { SpeedAnswer, SpeedFailure } from './types';

export type SpeedJob = {
  readonly engine: EngineSetup;
  readonly path: GasPath;
  readonly rpm: number;
  /** Longest cell, m. Default 0.01. */
  readonly cell?: number;
  /** What is kept beside the numbers. Default: numbers alone. */
  readonly keep?: 'numbers' | 'traces' | 'waves';
};

/**
 * A speed that is being followed. `advance` does at most so many steps and says whether all is done: torque settled, or the most
 * cycles were followed. Throws `FlowStopped` where a step cannot be done.
 */
export type RunningSpeed = {
  /** Cycles followed so far, and a guess at how many there will be. */
  readonly cycles: number;
  readonly likely: number;
  advance(steps: number): boolean;
  /** Once done. */
  answer(): SpeedAnswer;
};

/**
 * Whoever follows jobs, as many at once as there are cores: threads of the command line, workers of the app, one after the other in
 * tests. What is built from many speeds (a curve, a comparison, a study, a fit) takes one of these and knows no thread.
 */
export type Team = {
  /**
   * Tells each answer as it comes, in any order; over when all are told, or `stopped` says so. A job that cannot be followed is told
   * as a failure and ends nothing.
   */
  follow(
    jobs: readonly SpeedJob[],
    tell: (index: number, answer: SpeedAnswer | SpeedFailure) => void,
    stopped?: () => boolean,
  ): Promise<void>;
};
