/** The engine brought to agree with its measured curve: followed by the crew, ended, taken as one step of history. N m. */
import { create } from 'zustand';
import { setFitted } from '../../../../shared/design/edit';
import type { Design, Fitted } from '../../../../shared/design/types';
import { type FitProgress, fitBaseline } from '../../../pulse/forecast/fit';
import { measuredOf } from '../../../pulse/forecast/fit/measured';
import type { Team } from '../../../pulse/forecast/job';
import { documents } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { linesOf } from '../../notices';
import type { Subject } from '../runs';

export type FitState = {
  readonly progress: FitProgress | null;
  /** What came of the last one, in words; and whether it failed. */
  readonly said: { readonly text: string; readonly fails: boolean } | null;
  /** Root of the mean square by which torque is off with these factors, N m. */
  readonly last: { readonly fitted: Fitted; readonly rms: number } | null;
};

export const NO_FIT: FitState = { progress: null, said: null, last: null };
export const useFit = create<FitState>()(() => NO_FIT);

let turn = 0;
export const stopFit = (): void => {
  turn += 1;
  useFit.setState({ progress: null });
};

/** @param baseOf what the curve was measured with */
export async function runFit(
  design: Design,
  baseOf: (kind: 'cast' | 'header', design: Design) => Subject,
  team: Team,
): Promise<void> {
  const own = ++turn;
  const stopped = () => own !== turn;
  const id = documents.store.getState().id;
  useFit.setState({ progress: { done: 0, likely: 1 }, said: null });
  try {
    const points = measuredOf(design);
    const base = baseOf(design.engine?.baseline?.on ?? 'cast', design);
    const fit = await fitBaseline(
      base,
      points,
      team,
      (progress) => !stopped() && useFit.setState({ progress }),
      stopped,
    );
    if (stopped()) return;
    if ('failed' in fit) return useFit.setState({ progress: null, said: { text: fit.failed, fails: true } });
    useFit.setState({ progress: null, said: { text: fit.message, fails: fit.atBound.length > 0 } });
    // Another design may have been opened meanwhile.
    if (documents.store.getState().id !== id) return;
    const refused = applyEdit((d) => setFitted(d, fit.fitted), 'Fit the engine to the measured curve');
    useFit.setState(
      refused === null ? { last: { fitted: fit.fitted, rms: fit.after } } : { said: { text: refused, fails: true } },
    );
  } catch (error) {
    if (!stopped()) useFit.setState({ progress: null, said: { text: linesOf(error).join(' '), fails: true } });
  }
}
