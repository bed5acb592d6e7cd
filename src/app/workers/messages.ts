/** What the app and its worker say to each other. Plain data only: it is copied between threads. */
import type {
  AreaSchedule,
  BalanceResult,
  CheckReport,
  Comparison,
  Draft,
  Meshes,
  Settled,
  Windows,
} from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { EngineForm } from '../../../shared/engine/form';
import type { PaperChoice } from '../../shop/shopFolder';

/** Meshes may be large, so they are sent once and kept; `null` means those sent last. */
export type Request =
  | { readonly job: 'check'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'windows'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'balance'; readonly design: Design; readonly meshes: Meshes | null }
  | { readonly job: 'settle'; readonly design: Design; readonly meshes: Meshes | null }
  | {
      readonly job: 'shop';
      readonly design: Design;
      readonly meshes: Meshes | null;
      readonly folder: string;
      /** Absent: as usual. */
      readonly onPaper?: PaperChoice;
    }
  | {
      readonly job: 'compare';
      readonly before: Design;
      readonly after: Design;
      /** Each design's own. */
      readonly beside: { readonly before: Meshes; readonly after: Meshes };
      readonly meshes: null;
    }
  | { readonly job: 'areas'; readonly design: Design; readonly port: string; readonly meshes: null }
  | { readonly job: 'draft'; readonly form: EngineForm; readonly meshes: null };

export type Answers = {
  readonly check: CheckReport;
  readonly windows: Windows;
  readonly balance: BalanceResult;
  readonly settle: Settled;
  readonly shop: ShopAnswer;
  readonly compare: Comparison;
  readonly draft: Draft;
  /** Null where no runner starts at the port. */
  readonly areas: AreaSchedule | null;
};

/** The shop folder as a zip, and what whoever opens it should know. */
export type ShopAnswer = {
  readonly zip: Uint8Array<ArrayBuffer>;
  readonly fileCount: number;
  readonly problemCount: number;
  /** Runners that are in no table and parts that are in no file, with the reason. */
  readonly leftOut: readonly string[];
  /** About parts that are made all the same. */
  readonly warnings: readonly string[];
};

/** What a long job is at; its answer comes after. */
export type Progress = { readonly doing: string };

export type Reply<Job extends keyof Answers = keyof Answers> =
  | { readonly done: Answers[Job] }
  | { readonly failed: string };
