/** How often the solver must do a step again smaller: seeded rigs of states far wilder than any engine's, side by side. SI units. */
import { startRig } from '../../../../src/pulse/startRig';
import { bothEnds, rig, wildPipe } from '../../../pulse/rigs';
import { random } from '../../../random';

const RIGS = 150;
/** 100 Pa to 30 MPa, 50 to 6300 K, m/s. */
const WILD = { pressure: [2, 7.5], temperature: [1.7, 3.8], fastest: 2500 } as const;

export function wildRuns(): { rigs: number; steps: number; retries: number; failed: number } {
  let [steps, retries, failed] = [0, 0, 0];
  for (let seed = 0; seed < RIGS; seed++) {
    const running = startRig(
      rig({
        pipes: [wildPipe(random(seed), WILD)],
        ends: bothEnds('p', seed % 2 ? 'closed' : 'open'),
        ambient: { pressure: 1e5, temperature: 300 },
        duration: 0.003,
      }),
    );
    try {
      running.advance(1e9);
    } catch {
      failed++;
    }
    const result = running.result();
    steps += result.steps;
    retries += result.retries;
  }
  return { rigs: RIGS, steps, retries, failed };
}
