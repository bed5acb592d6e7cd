/** What is asked for: who takes which inlet, how long to search, whether to keep the way that runners go. */
import { useState } from 'react';
import type { Range } from '../../../shared/design/ranges';
import type { Design } from '../../../shared/design/types';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { NumberField } from '../inspect/NumberField';
import { useJobs } from '../jobs';
import { OutOfReach } from '../windows/OutOfReach';
import { hasWays } from './offer';
import { put, startSearch, useLay } from './state';
import { type Inlets, SECONDS, type ToLay, toLay, whyNotLaid } from './wish';

const SEED: Range = { least: 0, most: 1_000_000, whole: true };
const ROUNDS: Range = { least: 1, most: 1_000_000, whole: true };

export function LayWishes({ design }: { readonly design: Design }) {
  const wish = useLay((s) => s.wish);
  const overtaken = useLay((s) => s.overtaken);
  const busy = useJobs((s) => s.running !== null);
  const facts = toLay(design);
  const why = whyNotLaid(facts);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const bad = event.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]');
        if (bad) bad.focus();
        else startSearch();
      }}
      noValidate
    >
      {overtaken && (
        <p role="status">The design changed meanwhile, so what was found no longer fits it. Lay it again.</p>
      )}
      <p className="quiet">
        {why ?? 'Looks for the fewest bends with which every rule holds. Nothing changes until you keep a layout.'}
      </p>
      <OutOfReach />
      <Locked {...facts} />
      <div className="lay-fields">
        <ChoiceField
          label="Inlets"
          meaning="Which inlet of its collector each runner takes"
          value={wish.inlets}
          choices={inletChoices(facts)}
          onCommit={always((value) => put({ inlets: value as Inlets }))}
        />
        <ChoiceField
          label="Search for"
          meaning="Time left after the first layout goes into better and other ones"
          value={String(wish.seconds)}
          choices={SECONDS.map((s) => ({ value: String(s), name: s < 60 ? `${s} s` : `${s / 60} min` }))}
          onCommit={always((value) => put({ seconds: Number(value) }))}
        />
      </div>
      {hasWays(design) && (
        <label className="lay-check">
          <input
            type="checkbox"
            checked={wish.keepsShape}
            onChange={(event) => put({ keepsShape: event.target.checked })}
          />
          Keep the way the runners go now
        </label>
      )}
      <ToRepeat />
      <div className="lay-acts">
        <button type="submit" className="button strong" disabled={why !== null || busy} data-first>
          {hasWays(design) ? 'Lay anew' : 'Lay the header'}
        </button>
      </div>
    </form>
  );
}

function Locked({ locked, runners }: ToLay) {
  if (locked === 0 || locked === runners) return null;
  return (
    <p className="quiet">
      {locked} of {runners} {locked === 1 ? 'is locked and stays' : 'are locked and stay'}.
    </p>
  );
}

const inletChoices = ({ given, hasOrder }: ToLay) => [
  ...(given > 0 ? [{ value: 'given', name: 'As they are now' }] : []),
  { value: 'free', name: 'As they lie best' },
  {
    value: 'firing',
    name: hasOrder ? 'In firing order round the collector' : 'In firing order: the engine has none yet',
    disabled: !hasOrder,
  },
];

/** Few ever need it, and who does knows why. */
function ToRepeat() {
  const { seed, rounds } = useLay((s) => s.wish);
  const [open, setOpen] = useState(rounds !== null);
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>To repeat a search</summary>
      <p className="quiet">The same seed and number of rounds come to the same layouts on any machine.</p>
      <div className="lay-fields">
        <NumberField
          label="Seed"
          quantity="count"
          range={SEED}
          value={seed}
          onCommit={always((value) => put({ seed: value }))}
        />
        <NumberField
          label="Rounds"
          meaning="Ends the search once they are done, if there is time for them"
          quantity="count"
          range={ROUNDS}
          value={rounds}
          fallback="as time allows"
          onCommit={always((value) => put({ rounds: value }))}
          onClear={always(() => put({ rounds: null }))}
        />
      </div>
    </details>
  );
}
