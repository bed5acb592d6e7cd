/**
 * The run whose waves play on the header, and where in the cycle they are. Lives in the session: never saved, never undone, over when
 * another design is opened. Crank degrees of the cylinder that fires first, −360 to 360.
 */
import { create } from 'zustand';
import type { Design } from '../../../../shared/design/types';
import { withinCycle } from '../../../pulse/forecast/cycle';
import { documents, whenOpened } from '../../document';
import type { Quantity } from '../../pulse/quantities';
import type { WaveRun } from '../waves/runs';

type Motion = {
  readonly run: WaveRun | null;
  readonly angle: number;
  readonly playing: boolean;
  /** Crank degrees in a second of the viewer's. */
  readonly pace: number;
  readonly quantity: Quantity;
  /** What its bar hides at the foot of the viewport, px; 0 while there is none. */
  readonly hidden: number;
};

export const PACES = [45, 90, 180, 360] as const;

export const useMotion = create<Motion>()(() => ({
  run: null,
  angle: -240,
  playing: false,
  pace: 90,
  quantity: 'pressure',
  hidden: 0,
}));

/** Motion only where the system does not ask for less of it; it can be started by hand then. */
const mayMove = (): boolean => !globalThis.matchMedia?.('(prefers-reduced-motion: reduce)').matches;

/** Whether a design still has the header that is played on. */
let isOn: (design: Design) => boolean = () => false;

/**
 * Colours the header in the viewport by this run's waves. Needs `answer.waves`; without them nothing plays.
 * @param stays asked of every edit: the waves of one header are not shown on another
 */
export function playOnHeader(run: WaveRun, stays: (design: Design) => boolean): void {
  isOn = stays;
  if (run.answer.waves) useMotion.setState({ run, angle: -240, playing: mayMove() });
  else stopOnHeader();
}

/** The tubes take their own colours again. */
export const stopOnHeader = (): void => useMotion.setState({ run: null, playing: false });

export const setPlaying = (playing: boolean): void => useMotion.setState({ playing });
export const setPace = (pace: number): void => useMotion.setState({ pace });
export const setQuantity = (quantity: Quantity): void => useMotion.setState({ quantity });

/** By hand: it stands still there. */
export const scrubTo = (angle: number): void => useMotion.setState({ angle: withinCycle(angle), playing: false });

/** A second that took long (a hidden tab, a slow picture) is no leap. */
const LONGEST = 0.1;

/** @param seconds since the last picture */
export function moveOn(seconds: number): void {
  const { playing, angle, pace } = useMotion.getState();
  if (playing) useMotion.setState({ angle: withinCycle(angle + pace * Math.min(LONGEST, seconds)) });
}

whenOpened(stopOnHeader);
documents.store.subscribe(({ settled }, before) => {
  if (settled && settled !== before.settled && useMotion.getState().run && !isOn(settled)) stopOnHeader();
});
