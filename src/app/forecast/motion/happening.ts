/** What the engine does at an angle of the cycle: who fired last, and whose exhaust valves are open. */
import type { EngineSetup } from '../../../pulse/engine/types';
import { withinCycle } from '../../../pulse/forecast/cycle';
import { firesAfter, valveTimes } from '../../../pulse/forecast/gasExchange';

export type Happening = {
  readonly fired: number;
  /** The one that opened last first. */
  readonly exhausting: readonly number[];
  readonly overlapping: readonly number[];
};

/** @param angle of the cylinder that fires first */
export function happeningAt(engine: EngineSetup, angle: number): Happening {
  const { exhaustOpens, exhaustCloses, overlap } = valveTimes(engine);
  const own = engine.cylinders.map((cylinder) => ({
    cylinder,
    at: withinCycle(angle - firesAfter(engine, cylinder)),
  }));
  const within = (at: number, from: number, to: number) => at >= from && at <= to;
  return {
    fired: own.reduce((a, b) => (b.at < a.at ? b : a)).cylinder,
    exhausting: own
      .filter(({ at }) => within(at, exhaustOpens, exhaustCloses))
      .sort((a, b) => a.at - b.at)
      .map(({ cylinder }) => cylinder),
    overlapping: overlap ? own.filter(({ at }) => within(at, ...overlap)).map(({ cylinder }) => cylinder) : [],
  };
}
