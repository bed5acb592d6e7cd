/** What is near what, all over the header: the least gaps as a list, and the gap along each tube. mm, in the design's frame. */

import type { Vec3 } from '../../shared/vec3';
import type { Margin } from '../check/report';

/** Where in the header's motion a gap is least. */
export type MotionPose = {
  /** Of the engine about its roll axis, degrees. */
  readonly rock: number;
  /** From 0, cold, to 1, hot. */
  readonly heat: number;
};

export type GapEntry = Margin & {
  readonly kind: 'tube-to-tube' | 'surroundings' | 'merge-body';
  /** The two surface points that it is measured between, where they are when it is least. */
  readonly from: Vec3;
  readonly to: Vec3;
  /** Station on the first of `between`, where that is a runner. */
  readonly station: number | null;
  /** Absent where the header does not move. */
  readonly pose?: MotionPose;
};

/** The gap along one runner, for colour: at each station the least margin to anything that is not welded to it there. */
export type GapProfile = {
  readonly runner: string;
  /** Evenly along the centerline, first and last included, mm. */
  readonly stations: Float64Array;
  /** Gap less what is required there; at most `within` of the question. */
  readonly margins: Float64Array;
};

export type GapReport = {
  /** Least margin first. */
  readonly gaps: readonly GapEntry[];
  readonly profiles: readonly GapProfile[];
};
