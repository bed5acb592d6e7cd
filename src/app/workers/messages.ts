/** What the app and its worker say to each other. Plain data only: it is copied between threads. */
import type { BalanceResult, CheckReport, Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

/** Meshes may be large, so they are sent once and kept; `null` means those sent last. */
export type Request =
  | { readonly job: 'check'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'balance'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'shop'; readonly design: Design; readonly meshes: Meshes | null };

export type Answers = {
  readonly check: CheckReport;
  readonly balance: BalanceResult;
  /** A zip of the shop folder. */
  readonly shop: Uint8Array;
};

export type Reply<Job extends keyof Answers = keyof Answers> =
  | { readonly done: Answers[Job] }
  | { readonly failed: string };
