/** The engine brought to agree with its measured curve: followed by the crew, ended, taken as one step of history. N m. */
import { create } from 'zustand';
import { setFitted } from '../../../../shared/design/edit';
import { DesignError } from '../../../../shared/design/refusal';
import type { Design, Fitted } from '../../../../shared/design/types';
import { engineSetup } from '../../../pulse/engine/setup';
import { type Fit, type FitProgress, fitBaseline } from '../../../pulse/forecast/fit';
import { measuredOf } from '../../../pulse/forecast/fit/measured';
import type { Team } from '../../../pulse/forecast/job';
import { documents, whenOpened } from '../../document';
import { applyEdit } from '../../inspect/applyEdit';
import { linesOf } from '../../notices';
import type { Subject } from '../runs';

export type FitState = {
  readonly progress: FitProgress | null;
  /** What came of the last one, in words; and whether it failed. */
  readonly said: { readonly text: string; readonly fails: boolean } | null;
  /** Root of the mean square by which torque is off with these factors, N m. */
  readonly last: { readonly fitted: Fitted; readonly rms: number } | null;
  /** The best that a stopped one had come to; null where that is no better than the usual values. */
  readonly unfinished: { take(): void } | null;
};

export const NO_FIT: FitState = { progress: null, said: null, last: null, unfinished: null };
export const useFit = create<FitState>()(() => NO_FIT);

let turn = 0;
/** The one begun last: what another came to is of no more interest. */
let latest: object | null = null;
export const stopFit = (): void => {
  turn += 1;
  useFit.setState({ progress: null });
};

// What was said and offered was of the design before.
whenOpened(() => {
  stopFit();
  useFit.setState(NO_FIT);
});

type BaseOf = (kind: 'cast' | 'header', design: Design) => Subject;

/** Of the engine's cylinders: those whose exhaust is drawn. The curve was measured on all of them. */
const partOf = (design: Design, { engine }: Subject): number =>
  engine.cylinders.length / engineSetup(design).setup.cylinders.length;

/** What the curve was measured with, and its points at the crank. @throws DesignError */
function measuredWith(design: Design, baseOf: BaseOf) {
  // What bars the curve itself is said before what bars the engine.
  measuredOf(design);
  const base = baseOf(design.engine?.baseline?.on ?? 'cast', design);
  return { base, points: measuredOf(design, partOf(design, base)) };
}

/** The same while a fit would come to the same factors: those that are in force, the speeds and the title count for nothing. */
function groundOf(design: Design, baseOf: BaseOf): string | null {
  try {
    const { fitted: _, ...engine } = design.engine ?? {};
    const { base, points } = measuredWith({ ...design, engine }, baseOf);
    return JSON.stringify([{ ...base.engine, speeds: null }, { ...base.path, title: '' }, points]);
  } catch (error) {
    if (error instanceof DesignError) return null;
    throw error;
  }
}

const CHANGED =
  'Not taken: the engine, its pipes or the measured curve were edited since this fit began. Fit it again.';

/** @param baseOf what the curve was measured with */
export async function runFit(design: Design, baseOf: BaseOf, team: Team): Promise<void> {
  const own = ++turn;
  const me = {};
  latest = me;
  const stopped = () => own !== turn;
  const { id } = documents.store.getState();
  useFit.setState({ progress: { done: 0, likely: 1 }, said: null, unfinished: null });
  try {
    const { base, points } = measuredWith(design, baseOf);
    const ground = groundOf(design, baseOf);
    const take = (fit: Fit): void => {
      const now = documents.store.getState();
      // Another design may have been opened meanwhile.
      if (now.id !== id || !now.settled) return;
      const refused =
        ground === groundOf(now.settled, baseOf)
          ? applyEdit((d) => setFitted(d, fit.fitted), 'Fit the engine to the measured curve')
          : CHANGED;
      useFit.setState({
        unfinished: null,
        ...(refused === null
          ? { last: { fitted: fit.fitted, rms: fit.after } }
          : { said: { text: refused, fails: true } }),
      });
    };
    const fit = await fitBaseline(
      base,
      points,
      team,
      (progress) => !stopped() && useFit.setState({ progress }),
      stopped,
    );
    if (latest !== me || documents.store.getState().id !== id) return;
    if (stopped()) {
      if ('failed' in fit || fit.failure !== null || fit.after >= fit.before) return;
      return useFit.setState({
        said: { text: fit.message, fails: false },
        unfinished: { take: () => take(fit) },
      });
    }
    if ('failed' in fit) return useFit.setState({ progress: null, said: { text: fit.failed, fails: true } });
    const fails = fit.failure !== null || fit.atBound.length > 0;
    useFit.setState({ progress: null, said: { text: fit.message, fails } });
    if (fit.failure === null) take(fit);
  } catch (error) {
    if (!stopped()) useFit.setState({ progress: null, said: { text: linesOf(error).join(' '), fails: true } });
  }
}
