/** Follows the flow in a rig off the main thread: one rig at a time, ended when asked to; what it answers is handed over, not copied. */
import { FlowStopped } from '../../pulse/report';
import { startRig } from '../../pulse/startRig';
import type { Answer, FollowReply, FollowRequest } from './messages';
import { buffersOf, type Ground, runInSlices } from './slices';

/** A message to oneself comes after those that wait, without the delay that timers are given. */
const channel = new MessageChannel();
let breathed = () => {};
channel.port1.onmessage = () => breathed();

const ground: Ground = {
  start: startRig,
  isStop: (error) => error instanceof FlowStopped,
  now: () => performance.now(),
  breathe: () =>
    new Promise((resolve) => {
      breathed = resolve;
      channel.port2.postMessage(null);
    }),
};

let ended = -1;

function say(number: number, answer: Answer): void {
  const run = 'run' in answer ? answer.run : 'soFar' in answer ? answer.soFar : null;
  self.postMessage({ number, answer } satisfies FollowReply, { transfer: buffersOf(run) });
}

self.onmessage = ({ data }: MessageEvent<FollowRequest>) => {
  const { number } = data;
  if ('end' in data) ended = number;
  else
    void runInSlices(
      data,
      ground,
      () => ended === number,
      (answer) => say(number, answer),
    );
};
