/** The search under way: time and rounds, the best so far, and two ways out: with what was found, or without. */
import { useEffect, useState } from 'react';
import { useDisplay } from '../actions/display';
import { cancelSearch, type Search, stopSearch } from './state';
import { counted, layoutWords } from './words';

/** How often the clock is read, ms. */
const TICK = 200;

export function LayProgress({ search }: { readonly search: Search }) {
  const { harvest, rounds, wish, began } = search;
  const display = useDisplay();
  const seconds = useSecondsSince(began);
  const part = Math.min(1, seconds / wish.seconds);
  const { best, layouts } = harvest;
  return (
    // Has the focus while it lasts: a second press of Enter must not give up what the first began.
    <div data-first tabIndex={-1} className="lay-search">
      <div
        className="lay-bar"
        role="progressbar"
        aria-label="Time"
        aria-valuemin={0}
        aria-valuemax={wish.seconds}
        aria-valuenow={Math.min(wish.seconds, Math.floor(seconds))}
      >
        <div style={{ width: `${100 * part}%` }} />
      </div>
      <p className="quiet lay-clock">
        <span>
          {Math.min(wish.seconds, Math.floor(seconds))} of {wish.seconds} s
        </span>
        <span>{wish.rounds === null ? counted(rounds, 'round') : `${rounds} of ${counted(wish.rounds, 'round')}`}</span>
        <span>{counted(layouts.length, 'layout')}</span>
      </p>
      <p role="status" className="lay-best">
        {!best && 'Nothing drawn yet.'}
        {best?.report.ok && (
          <>
            <strong>Best so far:</strong> {layoutWords(best, display)}
          </>
        )}
        {best && !best.report.ok && (
          <>
            <strong>Nearest so far:</strong> {counted(best.report.problems.length, 'rule')} missed
          </>
        )}
      </p>
      <div className="lay-acts">
        <button type="button" className="button" disabled={!best} onClick={stopSearch}>
          Stop and choose
        </button>
        <button type="button" className="button" onClick={cancelSearch}>
          Cancel
        </button>
      </div>
    </div>
  );
}

function useSecondsSince(began: number): number {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), TICK);
    return () => clearInterval(timer);
  }, []);
  return Math.max(0, now - began) / 1000;
}
