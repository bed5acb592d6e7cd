/** What the app and its worker say to each other. Plain data only: it is copied between threads. */
import type { BalanceResult, CheckReport, Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

/** Meshes may be large, so they are sent once and kept; `null` means those sent last. */
export type Request =
  | { readonly job: 'check'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'balance'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'shop'; readonly design: Design; readonly meshes: Meshes | null; readonly folder: string };

export type Answers = {
  readonly check: CheckReport;
  readonly balance: BalanceResult;
  readonly shop: ShopAnswer;
};

/** The shop folder as a zip, and what whoever opens it should know. */
export type ShopAnswer = {
  readonly zip: Uint8Array<ArrayBuffer>;
  readonly fileCount: number;
  readonly problemCount: number;
  /** Runners that are in no table, with the reason. */
  readonly leftOut: readonly string[];
};

export type Reply<Job extends keyof Answers = keyof Answers> =
  | { readonly done: Answers[Job] }
  | { readonly failed: string };
