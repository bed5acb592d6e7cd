/** What the faces of the waves are given: one speed of one engine on one gas path, followed with its waves kept, under a name for the user. */

import type { EngineSetup } from '../../../pulse/engine/types';
import type { SpeedAnswer } from '../../../pulse/forecast/types';
import type { GasPath } from '../../../pulse/path/types';
import type { Paint } from '../../colours';

export type WaveRun = {
  readonly name: string;
  readonly answer: SpeedAnswer;
  readonly engine: EngineSetup;
  readonly path: GasPath;
  /** As it is drawn elsewhere on the page. Default: by its place among the runs. */
  readonly paint?: Paint;
};

/** Of both faces. The first run is the one that is explained; the others are laid over or beside it. */
export type FaceProps = { readonly runs: readonly WaveRun[] };
