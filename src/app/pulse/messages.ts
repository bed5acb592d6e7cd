/** What the page and the worker that follows a rig say to each other. Plain data; what a run answers is in SI units. */
import type { RigRun } from '../../pulse/report';
import type { Rig } from '../../pulse/rig/types';

/** `number` tells the answers to one request from those to another. `end` asks for what there is, at once. */
export type FollowRequest =
  | { readonly number: number; readonly rig: Rig; readonly pictureRows: number }
  | { readonly number: number; readonly end: true };

export type Progress = {
  /** Reached, and to be reached, s. */
  readonly time: number;
  readonly duration: number;
  /** Spent in the solver itself, s. */
  readonly spent: number;
};

/** How a run came to its end: by its duration, by whoever watched, or where the flow could not be followed. */
export type Ending =
  | { readonly how: 'whole' }
  | { readonly how: 'ended' }
  | { readonly how: 'stopped'; readonly why: string };

export type Answer =
  | { readonly begun: true }
  | { readonly progress: Progress; readonly soFar: RigRun | null }
  | { readonly ending: Ending; readonly progress: Progress; readonly run: RigRun }
  | { readonly failed: string };

export type FollowReply = { readonly number: number; readonly answer: Answer };
