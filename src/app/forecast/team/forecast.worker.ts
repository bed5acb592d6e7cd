/** Follows speeds off the main thread, one at a time; ended by being let go of. Its answers are handed over, not copied. */
import { startSpeed } from '../../../pulse/forecast/startSpeed';
import { buffersOf } from '../../pulse/slices';
import { followOne } from './followOne';
import type { SpeedReply, SpeedRequest } from './messages';

const ground = { start: startSpeed, now: () => performance.now() };

self.onmessage = ({ data: { number, job } }: MessageEvent<SpeedRequest>) => {
  const told = followOne(job, ground, (share) => self.postMessage({ number, share } satisfies SpeedReply));
  // Waves of two pipes may share one list of places: each buffer is handed over once.
  self.postMessage({ number, told } satisfies SpeedReply, { transfer: [...new Set(buffersOf(told))] });
};
