/** What the app and the workers that look into the room round a header say to each other. Plain data, copied between threads. */

import type { Meshes } from '../../../geometry';
import type { GapReport } from '../../../geometry/gaps/report';
import type { AccessReport } from '../../../geometry/reach/report';
import type { RemovalReport } from '../../../geometry/removal/report';
import type { SensorEntry } from '../../../geometry/sensor/report';
import type { Design } from '../../../shared/design/types';

export type RoomAnswers = {
  readonly gaps: GapReport;
  readonly access: AccessReport;
  readonly sensors: readonly SensorEntry[];
  readonly removal: RemovalReport;
};
export type Question = keyof RoomAnswers;

/** Meshes may be large, so they are sent once and kept; `null` means those sent last. */
export type RoomRequest = {
  readonly question: Question;
  readonly design: Design;
  readonly meshes: Meshes | null;
};

/** `spent`: script, ms. */
export type RoomReply<Q extends Question = Question> =
  | { readonly question: Q; readonly done: RoomAnswers[Q]; readonly spent: number }
  | { readonly question: Q; readonly failed: string };
