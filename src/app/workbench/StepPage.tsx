/** One step on screen: its numbers large, its drawing, how it is done; the list of all beside it, on a phone in its place. */
import { useEffect, useRef, useState } from 'react';
import type { Design } from '../../../shared/design/types';
import type { Step, Task } from '../../shop/bench/step';
import { Icon } from '../panels/Icon';
import { StepDrawing } from './drawings/StepDrawing';
import { FigureView, figureWords } from './FigureView';
import { useBench } from './state';
import { tick, untick, useTicks } from './tickStore';
import { type Change, changesOf, nextOpen, progressOf, type Standing, standingOf } from './ticks';

type Props = { readonly steps: readonly Step[]; readonly of: string; readonly design: Design };

export function StepPage({ steps, of, design }: Props) {
  const ticks = useTicks((s) => s.ticks);
  const chosen = useBench((s) => s.step);
  const [listed, setListed] = useState(false);
  const top = useRef<HTMLDivElement>(null);
  const at = Math.max(
    0,
    steps.findIndex(({ id }) => id === chosen),
  );
  const step = steps[at]!;
  const go = (to: Step | undefined) => {
    if (!to) return;
    useBench.setState({ step: to.id });
    setListed(false);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: each step is read from its top
  useEffect(() => {
    // In braces: newer browsers answer a promise, which is no way to end an effect.
    top.current?.scrollTo({ top: 0 });
  }, [step.id]);
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.key === 'ArrowRight') go(steps[at + 1]);
      else if (event.key === 'ArrowLeft') go(steps[at - 1]);
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  });
  const standing = standingOf(step, ticks);
  const { done, all } = progressOf(steps, ticks);
  const press = () => {
    if (standing === 'done') {
      untick(step.id);
      return;
    }
    tick(step);
    const next = nextOpen(steps, { ...ticks, [step.id]: { at: 0, title: step.title, figures: step.figures } }, step.id);
    if (next) go(next);
  };
  return (
    <div className="bench-work" data-listed={listed || undefined}>
      <nav className="bench-bar">
        <button type="button" className="button" onClick={() => useBench.setState({ of: null, step: null })}>
          Runners
        </button>
        <span className="bench-where">
          <strong>{of === 'header' ? 'Whole header' : of}</strong>{' '}
          <span className="quiet">
            step {at + 1} of {all}, {done} done
          </span>
        </span>
        <button
          type="button"
          className="button bench-list-toggle"
          aria-expanded={listed}
          onClick={() => setListed(!listed)}
        >
          {listed ? 'Step' : 'List'}
        </button>
      </nav>
      <StepList steps={steps} now={step.id} onGo={go} />
      <div className="bench-step" ref={top}>
        <article aria-label={step.title}>
          <h2>{step.title}</h2>
          {standing === 'changed' && <Changed changes={changesOf(step, ticks[step.id]!)} design={design} />}
          {step.figures.length > 0 && (
            <dl className="bench-figures">
              {step.figures.map((figure) => (
                <FigureView key={figure.name} figure={figure} design={design} />
              ))}
            </dl>
          )}
          {step.care.length > 0 && (
            <ul className="bench-care">
              {step.care.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          )}
          {step.drawing && <StepDrawing drawing={step.drawing} />}
          {step.beside.length > 0 && (
            <dl className="bench-beside">
              {step.beside.map((figure) => (
                <div key={figure.name}>
                  <dt>{figure.name}</dt>
                  <dd>{figureWords(figure, design)}</dd>
                </div>
              ))}
            </dl>
          )}
          {step.says.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </article>
      </div>
      <footer className="bench-foot">
        <button type="button" className="button" disabled={at === 0} onClick={() => go(steps[at - 1])}>
          Back
        </button>
        <button type="button" className={`bench-tick ${standing}`} aria-pressed={standing === 'done'} onClick={press}>
          <Icon name="tick" />
          {standing === 'done'
            ? 'Done: press to take back'
            : standing === 'changed'
              ? 'Done by the new numbers'
              : 'Done'}
        </button>
        <button type="button" className="button" disabled={at === all - 1} onClick={() => go(steps[at + 1])}>
          Next
        </button>
      </footer>
    </div>
  );
}

function Changed({ changes, design }: { readonly changes: readonly Change[]; readonly design: Design }) {
  return (
    <div className="bench-changed" role="status">
      <strong>Changed since ticked</strong>
      <ul>
        {changes.map(({ name, was, now }) => (
          <li key={name}>
            {name}: {was ? `was ${figureWords(was, design)}` : 'is new'}
            {now ? '' : ', is no more'}
          </li>
        ))}
      </ul>
    </div>
  );
}

const TASK_NAMES: Readonly<Record<Task, string>> = {
  cut: 'Saw',
  dress: 'Dress',
  mark: 'Mark',
  bend: 'Bend',
  fit: 'Fit',
  check: 'Check',
  weld: 'Weld',
  prove: 'Prove',
};

const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  open: 'to do',
  done: 'done',
  changed: 'changed since ticked',
};

type ListProps = { readonly steps: readonly Step[]; readonly now: string; onGo(step: Step): void };

function StepList({ steps, now, onGo }: ListProps) {
  const ticks = useTicks((s) => s.ticks);
  return (
    <ol className="bench-list" aria-label="Steps">
      {steps.map((step, i) => {
        const standing = standingOf(step, ticks);
        return (
          <li key={step.id}>
            <button
              type="button"
              className={standing}
              aria-current={step.id === now ? 'step' : undefined}
              onClick={() => onGo(step)}
            >
              <span className="bench-mark">
                {standing === 'done' ? <Icon name="tick" /> : standing === 'changed' ? <Icon name="warn" /> : i + 1}
              </span>
              <span className="bench-list-title">{step.title}</span>
              <span className="quiet">{standing === 'changed' ? 'changed' : TASK_NAMES[step.task]}</span>
              <span className="unseen">{STANDING_WORDS[standing]}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}
