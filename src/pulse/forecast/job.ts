/** One speed of an engine on a gas path, to be followed by whoever has a core free: plain data. */
import type { EngineSetup } from '../engine/types';
import type { GasPath } from '../path/types';

export type SpeedJob = {
  readonly engine: EngineSetup;
  readonly path: GasPath;
  readonly rpm: number;
  /** Longest cell, m. Default 0.01. */
  readonly cell?: number;
  /** What is kept beside the numbers. Default: numbers alone. */
  readonly keep?: 'numbers' | 'traces' | 'waves';
};
