/** The engine fitted to the measured curve: the way to do it, how far it is, what came of it, and the way back. */
import type { Team } from '../../../pulse/forecast/job';
import { documents, useDocument } from '../../document';
import { calibrationWords } from '../calibration';
import { browserGround } from '../ground';
import { numberText } from '../quantities';
import { ownCrew } from '../shown';
import { runFit, stopFit, useFit } from './fit';
import { setAt } from './given';

const NAMES = { flow: 'flow through the valves', friction: 'friction', heat: 'heat to the walls' } as const;

/** Asked for last, it comes before curves that it will change anyway. */
const ahead: Team = { follow: (jobs, tell, stopped) => ownCrew().ahead(jobs, tell, stopped) };

export function FitRow() {
  const engine = useDocument((s) => s.settled?.engine);
  const { progress, said, last, unfinished } = useFit();
  const fitted = engine?.fitted;
  const fit = () => {
    const { settled } = documents.store.getState();
    if (settled) void runFit(settled, browserGround.subjectOf, ahead);
  };
  return (
    <div className="gain-fit" data-path="engine/fitted">
      <p>
        <b>{calibrationWords(engine, last)}.</b>
        {fitted && (
          <>
            {' '}
            Of the usual values:{' '}
            {Object.entries(NAMES)
              .map(([key, name]) => `${name} × ${numberText(fitted[key as keyof typeof NAMES] ?? 1, 3)}`)
              .join(', ')}
            .
          </>
        )}
      </p>
      {progress && (
        <p className="gain-run-state">
          <progress aria-label="Speeds followed for the fit" max={Math.max(1, progress.likely)} value={progress.done} />
          <span className="gain-count">
            {progress.done === 0 && progress.likely <= 1 ? (
              'begins…'
            ) : (
              <>
                {progress.done} <span className="quiet">of about {progress.likely}</span>
              </>
            )}
          </span>
        </p>
      )}
      <p role="status" className={said?.fails ? 'fails' : ''}>
        {said?.text}
      </p>
      <p className="gain-acts">
        {engine?.baseline && (
          <button type="button" className="button" onClick={progress ? stopFit : fit}>
            {progress ? 'Stop' : 'Fit the engine to it'}
          </button>
        )}
        {unfinished && !progress && (
          <button type="button" className="button" onClick={unfinished.take}>
            Take the unfinished fit
          </button>
        )}
        {fitted && !progress && (
          <button
            type="button"
            className="button"
            onClick={() => setAt('engine/fitted', undefined, 'Take the usual values again')}
          >
            Take the usual values again
          </button>
        )}
      </p>
    </div>
  );
}
