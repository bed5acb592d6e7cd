/** One speed from its start to its answer, in turns short enough that how far it is can be told. The worker's work without the worker. */
import type { RunningSpeed, SpeedJob } from '../../../pulse/forecast/job';
import type { SpeedAnswer, SpeedFailure } from '../../../pulse/forecast/types';
import { FIRST_TURN, nextTurn } from '../../../pulse/run/turns';

/** What it stands on; replaced in tests. */
export type Ground = {
  start(job: SpeedJob): RunningSpeed;
  /** ms */
  now(): number;
};

/** How often it is told how far it is, ms. */
const TELL_MS = 150;

/** Whatever stops it is told as a failure of that speed: the others go on. @param share told how much is done, 0 to 1 */
export function followOne(job: SpeedJob, ground: Ground, share: (done: number) => void): SpeedAnswer | SpeedFailure {
  try {
    const running = ground.start(job);
    let steps = FIRST_TURN;
    let told = ground.now();
    for (;;) {
      const before = ground.now();
      if (running.advance(steps)) return running.answer();
      const now = ground.now();
      steps = nextTurn(steps, now - before);
      if (now - told < TELL_MS) continue;
      told = now;
      share(Math.min(1, running.cycles / Math.max(1, running.likely)));
    }
  } catch (error) {
    return { rpm: job.rpm, failed: error instanceof Error ? error.message : String(error) };
  }
}
