/** Measuring, as a small card over the picture: what the next click takes, two lists for the keyboard, and the results. */
import './measure.css';
import { useState } from 'react';
import type { Header, Thing } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { Icon } from '../panels/Icon';
import { GRAINS, useViewState } from '../viewState';
import { allThings, sameThing } from './things';
import { type Measured, useMeasured } from './useMeasured';
import { nameOf, rowsOf } from './words';

const GRAIN_WORDS = { whole: 'Whole', part: 'Part', place: 'Place' } as const;
const GRAIN_HINTS = {
  whole: 'A click takes the whole runner or thing',
  part: 'A click takes the bend or straight under it',
  place: 'A click takes the very place, or the tangent point, mouth or corner near it',
} as const;

export function MeasureCard({ header }: { readonly header: Header }) {
  const { measuring, from, grain, setGrain, setMeasuring, forgetAll } = useViewState();
  const measured = useMeasured();
  if (!measuring && measured.length === 0) return null;
  return (
    <section className="measure-card" aria-label="Measure">
      <div className="measure-head">
        <h2>Measure</h2>
        {measured.length > 0 && (
          <button type="button" className="link" onClick={forgetAll}>
            Clear all
          </button>
        )}
        {measuring ? (
          <button
            type="button"
            className="button bare icon"
            aria-label="Stop measuring"
            title="Stop measuring; what was measured stays"
            onClick={() => setMeasuring(false)}
          >
            <Icon name="close" />
          </button>
        ) : (
          <button type="button" className="link" onClick={() => setMeasuring(true)}>
            Measure more
          </button>
        )}
      </div>
      {measuring && (
        <>
          <p className="measure-hint" aria-live="polite">
            {from ? `From ${nameOf(from)}: pick the other` : 'Pick two, in the picture, a table or the rack'}
          </p>
          <fieldset className="switch">
            <legend className="unseen">A click takes</legend>
            {GRAINS.map((g) => (
              <button
                key={g}
                type="button"
                aria-pressed={grain === g}
                title={GRAIN_HINTS[g]}
                onClick={() => setGrain(g)}
              >
                {GRAIN_WORDS[g]}
              </button>
            ))}
          </fieldset>
          <ByName header={header} />
        </>
      )}
      <ul className="measure-list">
        {[...measured].reverse().map((m) => (
          <Result key={m.key} measured={m} />
        ))}
      </ul>
    </section>
  );
}

/** Without a pointer: both chosen by name. */
function ByName({ header }: { readonly header: Header }) {
  const groups = allThings(header);
  const things = groups.flatMap((g) => g.things);
  const [names, setNames] = useState<readonly [string, string]>(['', '']);
  const [a, b] = names.map((name) => things.find((t) => nameOf(t) === name)) as [Thing | undefined, Thing | undefined];
  const choice = (i: 0 | 1, label: string) => (
    <select
      aria-label={label}
      value={names[i]}
      onChange={(e) => setNames(i === 0 ? [e.target.value, names[1]] : [names[0], e.target.value])}
    >
      <option value="">{label}…</option>
      {groups.map(({ group, things: list }) => (
        <optgroup key={group} label={group}>
          {list.map((t) => (
            <option key={nameOf(t)}>{nameOf(t)}</option>
          ))}
        </optgroup>
      ))}
    </select>
  );
  return (
    <form
      className="measure-names"
      onSubmit={(e) => {
        e.preventDefault();
        if (!a || !b) return;
        const { take } = useViewState.getState();
        useViewState.setState({ from: null });
        take(a);
        take(b);
      }}
    >
      {choice(0, 'From')}
      {choice(1, 'To')}
      <button type="submit" className="button" disabled={!a || !b || sameThing(a, b)}>
        Measure
      </button>
    </form>
  );
}

function Result({ measured: { key, a, b, answer } }: { readonly measured: Measured }) {
  const display = useDisplay();
  const forget = useViewState((s) => s.forget);
  const title = `${nameOf(a)} – ${nameOf(b)}`;
  return (
    <li>
      <div className="measure-title">
        <strong>{title}</strong>
        <button type="button" className="button bare icon" aria-label={`Clear ${title}`} onClick={() => forget(key)}>
          <Icon name="close" />
        </button>
      </div>
      {'missing' in answer ? (
        <p className="fails">{answer.missing}</p>
      ) : (
        <dl>
          {rowsOf(answer, display).map(({ label, text }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      )}
    </li>
  );
}
