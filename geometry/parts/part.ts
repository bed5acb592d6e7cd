/**
 * A piece of metal as it is made and welded in: what the 3D view draws, the shop folder writes and the tables count. Each
 * is one closed shell in a frame of its own, so that a part that only moved keeps its mesh. mm, mm³.
 */
import type { Pose } from '../header/merge';
import type { Loop } from '../plane/loop';
import type { Mesh } from '../solid/mesh';

/** In the order of the gas. */
export const PART_KINDS = [
  'flange',
  'transition',
  'tube',
  'stub',
  'filler',
  'plate',
  'cone',
  'outlet',
  'joint',
] as const;
export type PartKind = (typeof PART_KINDS)[number];

/** What of the design a part belongs to: picked and hidden with it. */
export type PartOwner = {
  readonly kind: 'flange' | 'port' | 'runner' | 'merge';
  readonly id: string;
};

export type HeaderPart = {
  /** Unique among the header's parts, and good as a file's name: `collector m1 stub 2`. */
  readonly id: string;
  readonly kind: PartKind;
  /** As a list under its owner says it: `stub 2`. */
  readonly name: string;
  readonly of: PartOwner;
  /** In the part's own frame: z along `pose.direction`, y along `pose.up`, x = up × direction. */
  readonly mesh: Mesh;
  /** Where that frame lies in the design's. */
  readonly pose: Pose;
  /** Of metal, in closed form or by quadrature of the true surfaces, not of the mesh. */
  readonly volume: number;
  readonly material: string | undefined;
  /** Lines to draw on it, in its own frame: weld and cut edges, as pairs of points. */
  readonly edges: Float32Array;
  /** Where it is cut from plate; flanges have drawings of their own. */
  readonly flat?: FlatPart;
};

/** What is cut from plate: closed curves on the part's own x and y. */
export type FlatPart = {
  readonly outline: Loop;
  /** What gas or tubes go through, and what bolts do. */
  readonly ports: readonly Loop[];
  readonly holes: readonly Loop[];
  readonly thickness: number;
};

/** A part that cannot be made as the design stands, or only with a doubt: where, and what would mend it. */
export type PartRemark = {
  readonly part: string;
  /** A path into the design, as in a problem's `where`. */
  readonly where: string;
  readonly message: string;
};

/** The parts that are spoken of, each once: a part may be missing for more than one reason. */
export const partsNamed = (remarks: readonly PartRemark[]): string[] => [...new Set(remarks.map(({ part }) => part))];

/** What was asked for, made as far as it could be. */
export type Made = {
  readonly parts: readonly HeaderPart[];
  /** These are missing. */
  readonly notMade: readonly PartRemark[];
  /** These are made, and someone should know. */
  readonly warnings: readonly PartRemark[];
};
