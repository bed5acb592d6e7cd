/** The page of a new header: one page of short sections beside a sketch, filled in already so that Make can be pressed. */
import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { formProblems } from '../../../shared/engine/formProblems';
import { DisplayOf } from '../actions/display';
import { always } from '../inspect/fields/always';
import { HintLine } from '../inspect/HintLine';
import { TextField } from '../inspect/TextField';
import { Icon } from '../panels/Icon';
import { UnitSwitch } from '../parts/UnitSwitch';
import { CollectorSection } from './CollectorSection';
import { EngineSection } from './EngineSection';
import { filled } from './formOf';
import { JoiningSection } from './JoiningSection';
import { PortSection } from './PortSection';
import { problemWords } from './problemWords';
import { Sketch } from './sketch/Sketch';
import { change, closeNewHeader, makeHeader, put, useNewHeader } from './state';
import { ToolingSection, TuningSection } from './ToolingSection';
import { TubeSection } from './TubeSection';

export function NewHeaderPage() {
  const wish = useNewHeader((s) => s.wish);
  const stop = useNewHeader((s) => s.stop);
  const all = useMemo(() => filled(wish), [wish]);
  const problems = useMemo(() => formProblems(all.form), [all]);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    // A newcomer can press Enter at once.
    form.current?.querySelector<HTMLElement>('button[type="submit"]')?.focus();
  }, []);
  // Said until the next answer.
  const [refused, setRefused] = useState<typeof wish | null>(null);
  const make = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const bad = event.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]');
    bad?.focus();
    setRefused(bad ? wish : null);
    if (!bad) void makeHeader();
  };
  const say = refused === wish ? REFUSED : problems[0] ? problemWords(problems[0]) : null;
  return (
    <DisplayOf value={wish.display}>
      <form ref={form} className="new-page" onSubmit={make} noValidate>
        <header className="new-head">
          <h2 id="new-title">New header</h2>
          <UnitSwitch onChoose={(display) => put({ display })} />
          <button type="button" className="button icon" aria-label="Close" onClick={closeNewHeader}>
            <Icon name="close" />
          </button>
        </header>
        <div className="new-body">
          <div className="new-sketch">
            <Sketch form={all.form} side={wish.banks === 1 ? wish.side : 1} />
          </div>
          <div className="new-sections" inert={stop !== null}>
            <p className="new-note">
              Everything is filled in for a common engine: change what you know, leave the rest. Lengths may be sums and
              fractions, in mm or in: 2*42.4+4, 1 5/8 in.
            </p>
            <section className="new-section" aria-label="Name">
              <div className="new-fields">
                <TextField
                  label="Title"
                  value={wish.title}
                  fallback={all.usual.title}
                  onCommit={(title) => {
                    if (title.length > LONGEST) return `At most ${LONGEST} characters.`;
                    change((w) => ({ ...w, title }));
                    return null;
                  }}
                  onClear={always(() => put({ title: null }))}
                />
              </div>
            </section>
            <EngineSection wish={wish} filled={all} />
            <PortSection wish={wish} filled={all} />
            <JoiningSection wish={wish} filled={all} />
            <TuningSection wish={wish} usual={all.usual} />
            <TubeSection which="primary" wish={wish} filled={all} />
            {all.form.secondary && <TubeSection which="secondary" wish={wish} filled={all} />}
            <CollectorSection wish={wish} filled={all} />
            <ToolingSection wish={wish} />
            <p className="new-note">
              Starting sizes are places to start from: the formulas were made for other engines and do not agree.
              Measure yours.
            </p>
          </div>
        </div>
        <footer className="new-foot">
          <div className="new-say" role="status">
            {say === null ? stop ? 'Drawing the header…' : <HintLine /> : <span className="fails">{say}</span>}
          </div>
          {stop ? (
            <button
              type="button"
              className="button"
              onClick={() => {
                stop();
              }}
            >
              Cancel
            </button>
          ) : (
            <button type="submit" className="button strong" disabled={problems.length > 0}>
              Make the header
            </button>
          )}
          {stop && <div className="busy" />}
        </footer>
      </form>
    </DisplayOf>
  );
}

const LONGEST = 120;
const REFUSED = 'One field holds what cannot be: mend it, or press Escape in it to have the old value back.';
