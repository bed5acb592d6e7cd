/** Whether the welded header slides off its studs and leaves the bay, by which path, and what to leave loose where not. mm, design frame. */
import type { Vec3 } from '../../shared/vec3';

/** A rigid place of the header: turned about the design's origin, then moved. At rest: identity. */
export type RemovalPose = {
  /** Axis times angle, radians, right-handed. */
  readonly turn: Vec3;
  /** mm. */
  readonly move: Vec3;
};

export type JointAdvice = {
  /** `merges/m1/outletJoint`, `merges/m1/inlets` or `runners/r1/end`. */
  readonly where: string;
  /** A second joint that is left loose as well, where one alone does not help. */
  readonly also?: string;
  readonly joint: 'slip' | 'flange';
  /** With it left so, everything comes off. */
  readonly helps: boolean;
  readonly message: string;
};

/** The header, or a part of it that comes off in one piece: all runners and collectors that are welded together. */
export type RemovalPiece = {
  /** Ids of its runners and merges. */
  readonly runners: readonly string[];
  readonly merges: readonly string[];
  readonly flanges: readonly string[];
  /** Off the studs, straight along them. */
  readonly slides: boolean;
  /** Out of the bay after that. */
  readonly leaves: boolean;
  /** Path from its place to where it is free, checked between neighbouring poses too: turn and move go evenly from one to the next. */
  readonly path: readonly RemovalPose[];
  /** The least room along the path, mm, and beside what. */
  readonly room: { readonly gap: number; readonly by: string } | null;
  /** The path leads through what is of kind ground: with the vehicle raised. Left out where it does not. */
  readonly raised?: true;
  /** Where it stops: ids of what it meets, after how far, mm, and the place at which they meet, design frame. */
  readonly stopped: { readonly by: readonly string[]; readonly after: number; readonly at: Vec3 } | null;
  readonly message: string;
};

export type RemovalReport = {
  readonly pieces: readonly RemovalPiece[];
  /** Joints to leave as a slip or flange, where a piece does not come off. */
  readonly joints: readonly JointAdvice[];
};
