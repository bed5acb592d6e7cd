/**
 * A team whose engine is a known, smooth function of flow, friction and heat: what a fit must find is then known. It answers in an order
 * of its own, fails where it is told to, and counts what it was asked.
 */
import { meanPistonSpeed } from '../../../src/pulse/engine/crank';
import { frictionPressure } from '../../../src/pulse/engine/friction';
import { engineSetup } from '../../../src/pulse/engine/setup';
import type { EngineSetup } from '../../../src/pulse/engine/types';
import type { Factors } from '../../../src/pulse/forecast/fit/factors';
import { withFactors } from '../../../src/pulse/forecast/fit/factors';
import type { SpeedJob, Team } from '../../../src/pulse/forecast/job';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';
import type { GasPath } from '../../../src/pulse/path/types';
import { designOf, FOUR } from '../engine/designs';

export const PATH: GasPath = { title: 'none', pipes: [], ends: [], valves: [] };
export const { setup: ENGINE } = engineSetup(designOf(FOUR));
export const BASE = { engine: ENGINE, path: PATH };

/** Flow tells most at high speeds and bends, heat at low ones; friction is the model's own. */
export function knownAnswer({ engine, rpm }: Pick<SpeedJob, 'engine' | 'rpm'>): SpeedAnswer {
  const share = rpm / 7000;
  const breathed = 1 - (0.55 * share ** 2) / engine.flowFactor ** 2.2 + 0.35 * share;
  const kept = 1 - (0.16 * engine.walls.factor) / ENGINE.walls.factor / (0.4 + 1.6 * share);
  const imep = 15e5 * breathed * kept;
  const fmep = frictionPressure(engine.friction, 65e5, meanPistonSpeed(engine.stroke, rpm));
  const swept = (Math.PI / 4) * engine.bore ** 2 * engine.stroke * engine.cylinders.length;
  const torque = ((imep - fmep) * swept) / (4 * Math.PI);
  return { rpm, torque, imep, fmep, bmep: imep - fmep } as unknown as SpeedAnswer;
}

/** A curve as this engine would be measured with these factors. */
export const measuredWith = (factors: Factors, speeds: readonly number[], engine: EngineSetup = ENGINE) =>
  speeds.map((rpm) => ({ rpm, torque: knownAnswer({ engine: withFactors(engine, factors), rpm }).torque }));

export type Known = Team & { readonly asked: SpeedJob[] };

/** @param failsAt rpm that cannot be followed */
export function knownTeam(failsAt: readonly number[] = []): Known {
  const asked: SpeedJob[] = [];
  return {
    asked,
    async follow(jobs, tell, stopped = () => false) {
      // From both ends inward, as threads would not answer in order either.
      const order = jobs.map((_, i) => (i % 2 === 0 ? i / 2 : jobs.length - (i + 1) / 2));
      for (const i of order) {
        if (stopped()) return;
        const job = jobs[i]!;
        asked.push(job);
        await Promise.resolve();
        tell(i, failsAt.includes(job.rpm) ? { rpm: job.rpm, failed: 'a step could not be done' } : knownAnswer(job));
      }
    },
  };
}
