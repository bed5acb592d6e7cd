/** What `check` answers: every rule of the contract as a measured finding. mm and degrees, as the document speaks. */
import type { Vec3 } from '../../shared/vec3';

export type RuleName =
  | 'document'
  | 'routed'
  | 'inlet'
  | 'end'
  | 'straight'
  | 'angle'
  | 'bends'
  | 'radius'
  | 'balance'
  | 'tube-to-tube'
  | 'surroundings'
  | 'merge-body'
  | 'self'
  | 'placement'
  | 'reach';

export type Problem = {
  readonly rule: RuleName;
  /** A path such as `runners/r1/points/2`, `groups/primaries` or `merges/m1`. */
  readonly where: string;
  readonly found: number | string | null;
  readonly allowed: number | string | readonly number[] | null;
  /** What is wrong, where, by how much, and what would mend it. */
  readonly message: string;
  /** A place in the design to look at, where there is one. */
  readonly at?: Vec3;
};

export type RunnerReport = {
  readonly id: string;
  /** Length for balance: in the head plus the centerline. */
  readonly length: number;
  readonly centerline: number;
  readonly bends: number;
  readonly straights: readonly number[];
  /** Bend angles, degrees. */
  readonly angles: readonly number[];
  readonly radii: readonly number[];
};

export type GroupReport = {
  readonly id: string;
  readonly mean: number;
  readonly min: number;
  readonly max: number;
  readonly spread: number;
};

/** The tightest place found of one kind; `margin` = gap − required, so negative is a clash. */
export type Margin = {
  readonly gap: number;
  readonly required: number;
  readonly margin: number;
  /** Two ids: runners, or a runner or merge and what it nears. */
  readonly between: readonly [string, string];
  readonly at: Vec3;
};

export type CheckReport = {
  readonly ok: boolean;
  readonly problems: readonly Problem[];
  readonly runners: readonly RunnerReport[];
  readonly groups: readonly GroupReport[];
  readonly clearance: {
    readonly tubeToTube: Margin | null;
    readonly surroundings: Margin | null;
    readonly mergeBodies: Margin | null;
  };
};
