/** What is known of the lengths that runners and groups can have in the space they stand in. mm, what lies in the head included. */
import type { Pose } from '../header/merge';

/**
 * Ends of a search, not proofs: `shortest` and `longest` were both found and built, every rule of the contract holding for
 * the runner alone; a longer search may find a little more. Not every length between the two need be buildable.
 */
export type Window = {
  /** Null where no layout was found at all. */
  readonly shortest: number | null;
  /** Null where no layout was found, or where it is unbounded. */
  readonly longest: number | null;
  /** A layout far longer than anyone would ask for was found (see `beyondUse`). */
  readonly unbounded: boolean;
};

export type RunnerWindow = Window & {
  readonly id: string;
  /** Of the shortest found: where the inlet is left open, the one that gives the least. */
  readonly inlet: number | null;
  /** A locked runner has the one length it was drawn with. */
  readonly locked: boolean;
};

/**
 * Lengths that every member has room for by itself, in whatever inlet and place of a movable merge suits that member best: an
 * outer bound of what all of them can have together.
 */
export type GroupWindow = Window & {
  readonly id: string;
  /** The runner that is longest at its shortest, so that none of the group can be shorter; null in an empty group. */
  readonly shortestBy: string | null;
  /** The runner that is shortest at its longest; null where no member has an upper limit. */
  readonly longestBy: string | null;
  /** Members that no layout was found for, which leave the group without a window. */
  readonly without: readonly string[];
};

export type Windows = { readonly runners: readonly RunnerWindow[]; readonly groups: readonly GroupWindow[] };

/** A runner this long has room for any length a header could need: its window counts as unbounded. */
export const beyondUse = (shortest: number): number => 2.5 * shortest + 1000;

/** The two ends that a line is drawn between. */
export type Ends = { readonly start: Pose; readonly end: Pose };
