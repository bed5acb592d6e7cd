/** The run whose waves play on the header, or none. Lives in the session: never saved, never undone. */
import { create } from 'zustand';
import type { WaveRun } from '../waves/runs';

type Motion = { readonly run: WaveRun | null };

export const useMotion = create<Motion>()(() => ({ run: null }));

/** Colours the header in the viewport by this run's waves. Needs `answer.waves`; without them nothing plays. */
export const playOnHeader = (run: WaveRun): void => useMotion.setState({ run: run.answer.waves ? run : null });

/** The tubes take their own colours again. */
export const stopOnHeader = (): void => useMotion.setState({ run: null });
