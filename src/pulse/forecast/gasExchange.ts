/** When a cylinder's valves are open, in its own crank degrees, and how these lie to those of the cylinder that fires first. */
import type { EngineSetup } from '../engine/types';

export type ValveTimes = {
  readonly exhaustOpens: number;
  readonly exhaustCloses: number;
  readonly intakeOpens: number;
  readonly intakeCloses: number;
  /** Both open; null where the exhaust valve is shut before the intake valve opens. */
  readonly overlap: readonly [from: number, to: number] | null;
};

export function valveTimes({
  exhaustValve,
  intakeValve,
}: Pick<EngineSetup, 'exhaustValve' | 'intakeValve'>): ValveTimes {
  const exhaustCloses = exhaustValve.lifts.at(-1)![0];
  const intakeOpens = intakeValve.lifts[0]![0];
  return {
    exhaustOpens: exhaustValve.lifts[0]![0],
    exhaustCloses,
    intakeOpens,
    intakeCloses: intakeValve.lifts.at(-1)![0],
    overlap: intakeOpens < exhaustCloses ? [intakeOpens, exhaustCloses] : null,
  };
}

/** How much later than the first one it fires, 0 to below 720: its own angle is the first one's less this. */
export function firesAfter({ cylinders, fires }: Pick<EngineSetup, 'cylinders' | 'fires'>, cylinder: number): number {
  const at = fires[cylinders.indexOf(cylinder)];
  if (at === undefined) throw new Error(`the engine has no cylinder ${cylinder}`);
  return at;
}
