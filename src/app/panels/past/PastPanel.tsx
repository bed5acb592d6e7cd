/** Every step of this design's history, the newest on top: what has been done, where we stand, and what was taken back. */
import './past.css';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { Design } from '../../../../shared/design/types';
import { rememberedOfTwo } from '../../../../shared/remember';
import { useDocument } from '../../document';
import { firstLabel, history, useHistory } from '../../history';
import { VersionsPanel } from '../../versions/VersionsPanel';
import { changesOf } from './changes';
import { type Place, StepRow } from './StepRow';

/** The versions come first: they are few, and steps may be thousands. */
export function PastPanel() {
  return (
    <>
      <VersionsPanel />
      <HistoryPanel />
    </>
  );
}

function HistoryPanel() {
  const { past, future, dropped } = useHistory((s) => s);
  const settled = useDocument((s) => s.settled);
  const list = useRef<HTMLOListElement>(null);
  const here = past.length;
  // biome-ignore lint/correctness/useExhaustiveDependencies: each time we come to stand elsewhere, it is brought in sight
  useEffect(() => {
    list.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest' });
  }, [here]);
  if (!settled) return null;

  const steps = [...past, ...future];
  const states = [...past.map((s) => s.design), settled, ...future.map((s) => s.design)];
  const place = (k: number): Place => (k < here ? 'behind' : k > here ? 'ahead' : 'here');
  return (
    <section className="panel past" aria-label="History">
      <div className="panel-head">
        <h2>History</h2>
        <span className="quiet">
          {steps.length === 0 ? 'nothing changed yet' : `${here} of ${count(steps.length)}`}
        </span>
      </div>
      <ol className="past-steps" ref={list} onKeyDown={walk} aria-label="Steps, the newest first">
        {steps
          .map((step, i) => (
            <StepRow
              // biome-ignore lint/suspicious/noArrayIndexKey: steps are numbered from the first made; that is who they are
              key={i + 1 + dropped}
              k={i + 1}
              label={step.label}
              at={step.at}
              changes={told(states[i]!, states[i + 1]!)}
              place={place(i + 1)}
              onPick={history.jump}
            />
          ))
          .reverse()}
        <StepRow
          key={dropped}
          k={0}
          label={firstLabel(dropped)}
          at={null}
          changes={dropped > 0 ? `${count(dropped)} before it ${dropped === 1 ? 'is' : 'are'} no longer kept` : ''}
          place={place(0)}
          onPick={history.jump}
        />
      </ol>
    </section>
  );
}

const count = (steps: number) => (steps === 1 ? '1 step' : `${steps} steps`);

/** Worked out once for each step, not each time that the list is drawn. */
const told = rememberedOfTwo((before: Design, after: Design) => changesOf(before, after).join('; '));

/** Up and down walk the steps; Enter or Space goes there. */
function walk(event: KeyboardEvent<HTMLOListElement>): void {
  const rows = [...event.currentTarget.querySelectorAll('button')];
  const at = rows.indexOf(event.target as HTMLButtonElement);
  const to = { ArrowUp: at - 1, ArrowDown: at + 1, Home: 0, End: rows.length - 1 }[event.key];
  if (at < 0 || to === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  rows[to]?.focus();
}
