/** Answers of an invented engine, smooth in speed and in the pipes, told by a team that follows nothing. */
import { readFileSync } from 'node:fs';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { SpeedJob, Team } from '../../../src/pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../../src/pulse/forecast/types';

export const FOUR = 'public/examples/four-4-1.evenrun.json';
export const designIn = (path: string): Design => parseDesign(readFileSync(path, 'utf8'));

export function answerAt(rpm: number, torque: number, more: Partial<SpeedAnswer> = {}): SpeedAnswer {
  return {
    ...{ rpm, torque, power: (torque * rpm * Math.PI) / 30 },
    ...{ bmep: 1e6, imep: 1.2e6, pmep: -2e4, fmep: 1.5e5, volumetricEfficiency: 0.9, residual: 0.05, lost: 0.01 },
    ...{ reversion: 0.02, exhaustTemperature: 1100, peakPressure: 6e6 },
    shares: { brake: 0.3, friction: 0.05, coolant: 0.15, port: 0.05, exhaust: 0.35, unburnt: 0.1, unaccounted: 0 },
    cylinders: [],
    ...{ cycles: 9, fineCycles: 3, settled: true, drift: 5e-4, cell: 0.01, cellUpdates: 1000 },
    ...{ doubts: [], traces: null, waves: null },
    ...more,
  };
}

/** Strongest where the mean primary is tuned to the speed; longer cells show a little less of it. */
export function inventedTorque({ path, rpm, cell = 0.01 }: SpeedJob): number {
  const firsts = path.valves.map(({ pipe }) => path.pipes.find(({ id }) => id === pipe)!);
  const mean = firsts.reduce((sum, { length }) => sum + length, 0) / firsts.length;
  const uneven = Math.max(...firsts.map(({ length }) => length)) - Math.min(...firsts.map(({ length }) => length));
  const bore = firsts[0]!.diameter.at(-1)![1];
  const tuned = 3600 / mean;
  return 150 + 40 * Math.exp(-(((rpm - tuned) / 1500) ** 2)) - 2e4 * (bore - 0.04) ** 2 - 50 * uneven - 100 * cell;
}

/** Tells last jobs first, as threads might. @param of torque, or why it cannot be followed */
export const fakeTeam = (
  of: (job: SpeedJob) => number | string = inventedTorque,
): Team & { readonly followed: SpeedJob[] } => {
  const followed: SpeedJob[] = [];
  return {
    followed,
    follow: async (jobs, tell, stopped = () => false) => {
      for (let k = jobs.length - 1; k >= 0 && !stopped(); k--) {
        followed.push(jobs[k]!);
        tell(k, told(jobs[k]!, of(jobs[k]!)));
      }
    },
  };
};

const told = ({ rpm }: SpeedJob, of: number | string): SpeedAnswer | SpeedFailure =>
  typeof of === 'string' ? { rpm, failed: of } : answerAt(rpm, of);
