/** The open design's ticks, read when the workbench is opened and kept in this browser with every one that is set or taken back. */
import { create } from 'zustand';
import type { Step } from '../../shop/bench/step';
import { linesOf } from '../notices';
import { kept, shelf } from '../shelf/browserShelf';
import { readTicks, type Ticks, ticked, unticked, writeTicks } from './ticks';

type TickState = {
  /** The design that they are of; null until they are read. */
  readonly of: string | null;
  readonly ticks: Ticks;
  /** Why the last one was not kept. */
  readonly trouble: string | null;
};

export const useTicks = create<TickState>()(() => ({ of: null, ticks: {}, trouble: null }));

export async function loadTicks(design: string): Promise<void> {
  useTicks.setState({ of: null, ticks: {}, trouble: null });
  const text = await kept.ticks(design).catch(() => null);
  useTicks.setState({ of: design, ticks: readTicks(text) });
}

/** One after the other, so that the last stands. */
let writing: Promise<unknown> = Promise.resolve();

function put(ticks: Ticks): void {
  const { of } = useTicks.getState();
  if (of === null) return;
  useTicks.setState({ ticks });
  writing = writing
    .then(() => shelf.keepTicks(of, writeTicks(ticks)))
    .then(
      () => useTicks.setState({ trouble: null }),
      (error) => useTicks.setState({ trouble: linesOf(error).join('; ') }),
    );
}

export const tick = (step: Step): void => put(ticked(useTicks.getState().ticks, step, Date.now()));
export const untick = (...ids: readonly string[]): void => put(unticked(useTicks.getState().ticks, ids));
