/** What is followed over the speeds: one engine on one way of its gas. Plain data and pure steps; SI units. */

import type { Assumed, EngineSetup } from '../../pulse/engine/types';
import type { SpeedAnswer, SpeedFailure } from '../../pulse/forecast/types';
import type { GasPath } from '../../pulse/path/types';

/** What the engine breathes through. `other/…` is another design, by its id on the shelf. */
export type RunKind = 'header' | 'cast' | 'sketch' | 'equal' | 'uneven' | 'arrangement' | `other/${string}`;

export type Subject = {
  readonly kind: RunKind;
  readonly title: string;
  readonly engine: EngineSetup;
  readonly path: GasPath;
  readonly assumed: readonly Assumed[];
  /** Sentences on what it leaves out. */
  readonly notes: readonly string[];
};

export type Told = SpeedAnswer | SpeedFailure | null;

export type Run = {
  readonly subject: Subject;
  /** rpm, rising. */
  readonly speeds: readonly number[];
  /** As long as the speeds; null: not followed yet. First on coarse cells, so that a curve is there soon. */
  readonly told: readonly Told[];
  /** Which of them were followed on fine cells: they come no better. */
  readonly final: readonly boolean[];
};

export const emptyRun = (subject: Subject, speeds: readonly number[]): Run => ({
  subject,
  speeds,
  told: speeds.map(() => null),
  final: speeds.map(() => false),
});

/** @param final on fine cells; a coarse answer never takes such a one's place */
export function withTold(run: Run, index: number, told: SpeedAnswer | SpeedFailure, final = true): Run {
  if (run.final[index] && !final) return run;
  return {
    ...run,
    told: run.told.map((was, k) => (k === index ? told : was)),
    final: run.final.map((was, k) => (k === index ? final : was)),
  };
}

const count = (runs: readonly Run[], of: (run: Run) => readonly unknown[]): number =>
  runs.reduce((sum, run) => sum + of(run).filter((t) => t !== null && t !== false).length, 0);

/** Speeds that have an answer of any kind, and those that have their last one. */
export const countTold = (runs: readonly Run[]): number => count(runs, ({ told }) => told);
export const countFinal = (runs: readonly Run[]): number => count(runs, ({ final }) => final);

export const isWhole = ({ final }: Run): boolean => final.every(Boolean);

/** Of a speed that was followed; null where it was not, or could not be. */
export function answerAt(run: Run, rpm: number): SpeedAnswer | null {
  const told = run.told[run.speeds.indexOf(rpm)];
  return told && !('failed' in told) ? told : null;
}
