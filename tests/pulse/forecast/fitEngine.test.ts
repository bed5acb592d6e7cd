/** Fitting on the engine model itself: a curve that it made with known factors tells them again. One cylinder on one pipe, three speeds. */
import { expect, test } from 'vitest';
import { engineSetup } from '../../../src/pulse/engine/setup';
import { fitBaseline } from '../../../src/pulse/forecast/fit';
import { withFactors } from '../../../src/pulse/forecast/fit/factors';
import { FIT_CELL } from '../../../src/pulse/forecast/fit/followed';
import type { Team } from '../../../src/pulse/forecast/job';
import { followSpeed } from '../../../src/pulse/forecast/startSpeed';
import type { GasPath } from '../../../src/pulse/path/types';
import { designOf, FOUR } from '../engine/designs';

const path: GasPath = {
  title: 'one pipe',
  pipes: [
    {
      id: 'pipe',
      role: 'primary',
      length: 0.6,
      diameter: [
        [0, 0.04],
        [0.6, 0.04],
      ],
      roughness: 3e-5,
      wallTemperature: 700,
      inHead: 0.08,
      part: null,
    },
  ],
  ends: [{ kind: 'open', at: ['pipe', 'finish'] }],
  valves: [{ cylinder: 1, pipe: 'pipe', share: 1 }],
};
const alone: Team = {
  async follow(jobs, tell) {
    for (const [i, job] of jobs.entries()) tell(i, followSpeed(job));
  },
};

test('known factors are found again', async () => {
  const { setup } = engineSetup(designOf({ ...FOUR, cylinders: 1, intake: { plenumVolume: 0, runnerLength: 240 } }));
  const factors = { flow: 0.93, friction: 1.15, heat: 1.2 };
  const points = [2000, 4000, 6500].map((rpm) => ({
    rpm,
    torque: followSpeed({ engine: withFactors(setup, factors), path, rpm, cell: FIT_CELL }).torque,
  }));
  const fit = await fitBaseline({ engine: setup, path }, points, alone);
  if ('failed' in fit) throw new Error(fit.failed);
  // Torque is settled within 0.1 %, and what is known beforehand holds a little back.
  expect(fit.after).toBeLessThan(0.005 * Math.max(...points.map(({ torque }) => torque)));
  expect(Math.abs(fit.fitted.flow - factors.flow)).toBeLessThan(0.025);
  expect(Math.abs(fit.fitted.friction - factors.friction)).toBeLessThan(0.05);
  expect(Math.abs(fit.fitted.heat - factors.heat)).toBeLessThan(0.075);
}, 120_000);
