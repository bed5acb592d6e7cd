/** One piece of a collector before it is made: what it is, where it lies, and how to make it. mm, mm³. */
import type { Pose } from '../header/merge';
import type { FlatPart, PartKind } from '../parts/part';
import type { Mesh } from '../solid/mesh';

export type Piece = {
  readonly mesh: Mesh;
  readonly volume: number;
  readonly edges: Float32Array;
  readonly flat?: FlatPart;
};

export type PiecePlan = {
  readonly kind: PartKind;
  readonly name: string;
  /** In the design's frame. */
  readonly pose: Pose;
  readonly make: () => Piece;
};
