/** The versions kept of the open design: keep one, go back to it, compare, draw it over the view, remove it. */
import './versions.css';
import { useState } from 'react';
import { parseDesign } from '../../../shared/design/parse';
import { useDocument } from '../document';
import { useHistory } from '../history';
import { attempt } from '../notices';
import { shelf, useShelf } from '../shelf/browserShelf';
import type { KeptVersion } from '../storage/keptDesign';
import { openCompare, useCompare } from './compareState';
import { keepVersionNow, versionName } from './keep';

export function VersionsPanel() {
  const versions = useShelf((s) => s.versions);
  const none = useDocument((s) => s.settled === null);
  const [removed, setRemoved] = useState<KeptVersion | null>(null);
  const id = useDocument((s) => s.id);
  if (none) return null;
  return (
    <section className="panel versions" aria-label="Versions">
      <div className="panel-head">
        <h2>Versions</h2>
        {versions.length === 0 && <span className="quiet">none kept yet</span>}
        <button type="button" className="link" onClick={() => openCompare(versions[0] && `version/${versions[0].id}`)}>
          Compare…
        </button>
      </div>
      <KeepForm taken={versions.map((v) => v.name)} />
      {removed?.of === id && (
        <p className="version-removed" role="status">
          <span>“{removed.name}” removed</span>
          <button
            type="button"
            className="button"
            onClick={() => {
              setRemoved(null);
              void attempt('Putting it back', () => shelf.putBackVersion(removed));
            }}
          >
            Put back
          </button>
        </p>
      )}
      {versions.length > 0 && (
        <ul aria-label="Versions, the newest first">
          {versions.map((version) => (
            <Row key={version.id} version={version} onRemoved={() => setRemoved(version)} />
          ))}
        </ul>
      )}
    </section>
  );
}

function KeepForm({ taken }: { readonly taken: readonly string[] }) {
  const step = useHistory((s) => s.past.at(-1)?.label);
  const [name, setName] = useState('');
  return (
    <form
      className="version-keep"
      onSubmit={(event) => {
        event.preventDefault();
        void keepVersionNow(name);
        setName('');
      }}
    >
      <input
        className="filling"
        aria-label="Name of the version"
        placeholder={versionName(step, taken)}
        value={name}
        maxLength={120}
        onChange={(event) => setName(event.target.value)}
      />
      <button type="submit" className="button">
        Keep this version
      </button>
    </form>
  );
}

function Row({ version, onRemoved }: { readonly version: KeptVersion; onRemoved(): void }) {
  const drawn = useCompare((s) => s.drawn?.id === version.id);
  const act = (label: string, run: () => unknown, pressed?: boolean) => (
    <button
      type="button"
      className="link"
      aria-label={`${label} “${version.name}”`}
      aria-pressed={pressed}
      onClick={() => attempt(label, run)}
    >
      {label}
    </button>
  );
  return (
    <li className="version">
      <span className="version-name">{version.name}</span>
      <time className="quiet" dateTime={new Date(version.at).toISOString()}>
        {new Date(version.at).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })}
      </time>
      <span className="version-acts">
        {act('Go back to it', () => shelf.goBackTo(version))}
        {act('Compare', () => openCompare(`version/${version.id}`))}
        {act(drawn ? 'Hide' : 'Show over', () => draw(drawn ? null : version), drawn)}
        {act('Remove', async () => {
          if (drawn) draw(null);
          await shelf.removeVersion(version);
          onRemoved();
        })}
      </span>
    </li>
  );
}

function draw(version: KeptVersion | null): void {
  useCompare.setState({
    drawn: version && { id: version.id, of: version.of, design: parseDesign(version.text) },
  });
}
