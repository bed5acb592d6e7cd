/**
 * At the workbench: the steps of one runner after the other, one on screen at a time, read at arm's length and ticked off with a
 * thumb. Everything is here once it is opened: no line to anywhere is needed.
 */
import './bench.css';
import { useCallback, useEffect, useMemo, useState } from 'react';
import type { Step } from '../../shop/bench/step';
import { benchSteps } from '../../shop/bench/steps';
import { useDocument } from '../document';
import { answeredHeader, useMaking } from '../making/answer';
import { Icon } from '../panels/Icon';
import { Choose } from './Choose';
import { StepPage } from './StepPage';
import { closeBench, useBench } from './state';
import { loadTicks, useTicks } from './tickStore';
import { canStayAwake, useWakeLock } from './useWakeLock';

/** The steps of the header as a whole, in `of` of the bench's state. */
export const WHOLE = 'header';

export const stepsOf = (steps: readonly Step[], of: string): readonly Step[] =>
  steps.filter((step) => (of === WHOLE ? step.runner === null : step.runner === of));

export function BenchPage() {
  const id = useDocument((s) => s.id);
  const title = useDocument((s) => s.design?.title || s.fileName);
  const { making, of: design, working, error } = useMaking();
  const { of } = useBench();
  const loaded = useTicks((s) => s.of === id);
  const trouble = useTicks((s) => s.trouble);
  useEffect(() => void loadTicks(id), [id]);
  const steps = useMemo(() => (making && design ? benchSteps(making, answeredHeader(design)) : null), [making, design]);
  const own = steps && of !== null ? stepsOf(steps, of) : [];
  return (
    <div className="bench-page" aria-busy={working || !loaded}>
      <header className="bench-top">
        <button type="button" className="button bench-close" onClick={closeBench}>
          <Icon name="close" /> Close
        </button>
        <h1>{title}</h1>
        <Awake />
      </header>
      {working && (
        <p className="bench-note" role="status">
          {steps ? 'The design changed: working its numbers out again…' : 'Working the numbers out…'}
        </p>
      )}
      {error !== null && !working && (
        <p className="bench-note fails">
          The numbers were not found out{steps ? '; what stands here is of the design as it was before' : ''}: {error}
        </p>
      )}
      {trouble !== null && (
        <p className="bench-note fails" role="alert">
          Ticks are not kept in this browser: {trouble}
        </p>
      )}
      {steps && loaded && making && design && (
        <div className={`bench-body${working || error !== null ? ' stale' : ''}`}>
          {of !== null && own.length > 0 ? (
            <StepPage key={of} steps={own} of={of} design={design} />
          ) : (
            <Choose steps={steps} making={making} />
          )}
        </div>
      )}
    </div>
  );
}

function Awake() {
  const [on, setOn] = useState(false);
  const off = useCallback(() => setOn(false), []);
  useWakeLock(on, off);
  if (!canStayAwake()) return null;
  return (
    <label className="bench-awake">
      <input type="checkbox" checked={on} onChange={(event) => setOn(event.target.checked)} />
      Screen stays on
    </label>
  );
}
