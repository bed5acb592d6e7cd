/** Follows the flow of a rig in turns short enough to hear an interrupt between, and tells how far it is. */
import { FlowStopped, type RigRun, type Running } from '../../pulse/report';
import { secondsLeft, spanText, whyLong } from '../../pulse/rig/outlook';
import type { Rig } from '../../pulse/rig/types';
import { FIRST_TURN, nextTurn } from '../../pulse/run/turns';

/** So often progress is told, ms. */
const PROGRESS = 200;

/** `run`: what there is until the end, none where nothing could be begun. `message`: why it was no whole one. */
export type Followed = {
  readonly run: RigRun | null;
  readonly ended: 'whole' | 'interrupted' | 'stopped';
  readonly message: string;
  readonly stopped: FlowStopped | null;
};

/**
 * @param status one line that the next one overwrites @param remark a line that stays, told once, where it will take long
 */
export async function follow(
  rig: Rig,
  start: (rig: Rig) => Running,
  interrupted: () => boolean,
  status: (line: string) => void,
  remark: (line: string) => void,
): Promise<Followed> {
  let running: Running | null = null;
  try {
    running = start(rig);
    let turn = FIRST_TURN;
    const began = performance.now();
    let told = began;
    let isRemarked = false;
    for (let done = false; !done && !interrupted(); ) {
      const at = performance.now();
      done = running.advance(turn);
      const took = performance.now() - at;
      turn = nextTurn(turn, took);
      if (at + took - told > PROGRESS) {
        told = at + took;
        const left = secondsLeft((told - began) / 1000, running.time, running.duration);
        const why: string | null = isRemarked || left === null ? null : whyLong(left, rig);
        if (why !== null) remark(why);
        isRemarked ||= why !== null;
        status(progressLine(running, left));
      }
      await new Promise((resume) => setImmediate(resume));
    }
    const isWhole = running.time >= running.duration;
    const message = isWhole ? '' : `interrupted at ${instant(running.time)} of ${instant(running.duration)}`;
    return { run: running.result(), ended: isWhole ? 'whole' : 'interrupted', message, stopped: null };
  } catch (error) {
    if (!(error instanceof FlowStopped)) throw error;
    const message = error.message.replace(/\.$/, '');
    return { run: running?.result() ?? null, ended: 'stopped', message, stopped: error };
  }
}

export const instant = (seconds: number): string => `${Number(seconds.toPrecision(6))} s`;

const progressLine = ({ time, duration, steps }: Running, left: number | null): string =>
  [
    `${instant(time)} of ${instant(duration)}, ${Math.floor((100 * time) / duration)} %, ${steps} steps`,
    ...(left === null ? [] : [`${spanText(left)} left`]),
  ].join(', ');
