/**
 * Pressure waves in the pipes of a rig: pressure, velocity or temperature over place and time as colours, and over time at the
 * probes as curves. A laptop shows all of it at once, a phone one face at a time.
 */
import './waves.css';
import './wavesFaces.css';
import './wavesPhone.css';
import { type DragEvent, useState } from 'react';
import { Icon } from '../panels/Icon';
import { AccountFace } from './AccountFace';
import { ChooseRig, followFile, RigCards, useRigs } from './ChooseRig';
import { CurvesFace } from './CurvesFace';
import { PictureFace } from './PictureFace';
import { QUANTITIES, QUANTITY_KEYS } from './quantities';
import { RunState, StandingNotes } from './StandingLine';
import { chooseQuantity, chooseSpan, useShown } from './shown';
import { closeWaves } from './state';

const FACES = [
  { key: 'picture', label: 'Picture' },
  { key: 'curves', label: 'Probes' },
  { key: 'account', label: 'Account' },
] as const;

const SPANS = [
  { value: 1, name: 'all values' },
  { value: 0.5, name: 'half of them' },
  { value: 0.25, name: 'a quarter' },
  { value: 0.1, name: 'a tenth' },
] as const;

export function WavesPage() {
  const [face, setFace] = useState<(typeof FACES)[number]['key']>('picture');
  const [over, setOver] = useState(false);
  const found = useRigs();
  const { seen, asked, standing, quantity, span } = useShown();
  const holdsFiles = (event: DragEvent) => event.dataTransfer.types.includes('Files');
  const busy = standing.is === 'starting' || standing.is === 'running';
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: files are dropped on all of it; the button does the same
    <div
      className="waves-page"
      data-face={face}
      aria-busy={busy}
      onDragOver={(event) => {
        if (!holdsFiles(event)) return;
        // The page behind takes designs; here files are rigs.
        event.preventDefault();
        event.stopPropagation();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false);
      }}
      onDrop={(event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        event.stopPropagation();
        setOver(false);
        void followFile(event.dataTransfer.files[0]);
      }}
    >
      <header className="waves-top">
        <button type="button" className="button waves-close" onClick={closeWaves}>
          <Icon name="close" /> Close
        </button>
        <h1>Pressure waves in pipes</h1>
        <ChooseRig rigs={found.rigs} />
        <RunState />
      </header>
      <StandingNotes />
      {seen ? (
        <>
          <div className="waves-bar">
            {standing.is !== 'nothing' && asked?.name !== seen.name && <h2>{seen.name}</h2>}
            <fieldset className="switch">
              <legend className="unseen">Show</legend>
              {QUANTITY_KEYS.map((key) => (
                <button
                  key={key}
                  type="button"
                  className="waves-quantity"
                  aria-pressed={key === quantity}
                  onClick={() => chooseQuantity(key)}
                >
                  {QUANTITIES[key].name}
                </button>
              ))}
            </fieldset>
            <label className="waves-span">
              Colours span{' '}
              <select value={span} onChange={({ target }) => chooseSpan(Number(target.value))}>
                {SPANS.map(({ value, name }) => (
                  <option key={value} value={value}>
                    {name}
                  </option>
                ))}
              </select>
            </label>
          </div>
          <div className="waves-body">
            <PictureFace seen={seen} />
            <CurvesFace seen={seen} />
            <AccountFace seen={seen} />
          </div>
          <nav className="waves-faces" aria-label="Face">
            {FACES.map(({ key, label }) => (
              <button key={key} type="button" aria-pressed={face === key} onClick={() => setFace(key)}>
                {label}
              </button>
            ))}
          </nav>
        </>
      ) : busy ? (
        <p className="waves-waiting">The first of the picture comes in a moment…</p>
      ) : (
        <RigCards {...found} />
      )}
      {over && (
        <div className="drop" aria-hidden="true">
          <p>Drop a rig here</p>
        </div>
      )}
    </div>
  );
}
