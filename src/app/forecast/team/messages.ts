/** What the page and a worker that follows speeds say to each other. Plain data, SI units. */
import type { SpeedJob } from '../../../pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../../pulse/forecast/types';

/** `number` tells the answer to one job from those to another. */
export type SpeedRequest = { readonly number: number; readonly job: SpeedJob };

export type SpeedReply =
  | { readonly number: number; readonly told: SpeedAnswer | SpeedFailure }
  /** Share of the cycles there will probably be. */
  | { readonly number: number; readonly share: number };
