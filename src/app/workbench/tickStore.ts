/** The open design's ticks, read when the workbench is opened and kept in this browser with every one that is set or taken back. */
import { create } from 'zustand';
import type { Step } from '../../shop/bench/step';
import { linesOf } from '../notices';
import { kept, shelf } from '../shelf/browserShelf';
import { areOfLater, readTicks, type Ticks, ticked, unticked, writeTicks } from './ticks';

type TickState = {
  /** The design that they are of; null until they are read. */
  readonly of: string | null;
  readonly ticks: Ticks;
  /** Why the last one was not kept. */
  readonly trouble: string | null;
  /** What is kept could not be read: nothing is written over it. */
  readonly unread: boolean;
};

const NOTHING: TickState = { of: null, ticks: {}, trouble: null, unread: false };
const LATER = 'those that are there were written by a later version of this app; they are left as they are.';

export const useTicks = create<TickState>()(() => NOTHING);

/** One after the other, so that the last stands. */
let writing: Promise<unknown> = Promise.resolve();
/** Another design may be asked for while one is still read. */
let asked = 0;

export async function loadTicks(design: string): Promise<void> {
  const number = ++asked;
  useTicks.setState(NOTHING);
  const found = await readKept(design);
  if (number === asked) useTicks.setState({ ...NOTHING, of: design, ...found });
}

async function readKept(design: string): Promise<Partial<TickState>> {
  try {
    // What was ticked last may still be on its way: read without it, the next tick would write it away.
    await writing;
    const text = await kept.ticks(design);
    return areOfLater(text) ? { unread: true, trouble: LATER } : { ticks: readTicks(text) };
  } catch (error) {
    return { unread: true, trouble: linesOf(error).join('; ') };
  }
}

function put(ticks: Ticks): void {
  const { of, unread } = useTicks.getState();
  if (of === null) return;
  useTicks.setState({ ticks });
  if (unread) return;
  const told = (trouble: string | null) => {
    if (useTicks.getState().of === of) useTicks.setState({ trouble });
  };
  writing = writing
    .then(() => shelf.keepTicks(of, writeTicks(ticks)))
    .then(
      () => told(null),
      (error) => told(linesOf(error).join('; ')),
    );
}

export const tick = (step: Step): void => put(ticked(useTicks.getState().ticks, step, Date.now()));
export const untick = (...ids: readonly string[]): void => put(unticked(useTicks.getState().ticks, ids));
