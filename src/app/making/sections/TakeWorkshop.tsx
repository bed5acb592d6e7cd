/** The workshop of a design kept in this browser, or of one in a file, taken in place of this design's. */
import { useId, useRef, useState } from 'react';
import { useDocument } from '../../document';
import { useShelf } from '../../shelf/browserShelf';
import { titleOf } from '../../shelf/names';
import { takeFromFile, takeFromKept } from '../take';

export function TakeWorkshop() {
  const here = useDocument((s) => s.id);
  const designs = useShelf((s) => s.designs).filter(({ id }) => id !== here);
  const [chosen, setChosen] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const from = designs.find((d) => d.id === chosen) ?? designs[0];
  return (
    <>
      {designs.length > 0 && from && (
        <div className="make-take">
          <label htmlFor={id} className="unseen">
            Design kept in this browser
          </label>
          <select id={id} className="filling" value={from.id} onChange={(event) => setChosen(event.target.value)}>
            {designs.map((d) => (
              <option key={d.id} value={d.id}>
                {titleOf(d)}
              </option>
            ))}
          </select>
          <button type="button" className="button" onClick={() => takeFromKept(from.id, titleOf(from))}>
            Take its workshop
          </button>
        </div>
      )}
      <button type="button" className="button small" onClick={() => input.current?.click()}>
        Take it from a file…
      </button>
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        accept=".json"
        aria-label="Design file to take the workshop from"
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          // Cleared so that the same file can be picked again after it was mended.
          event.target.value = '';
          if (file) void takeFromFile(file);
        }}
      />
      <p className="note">
        All of it, in place of this design’s own: the shelf, the saw, the prices. One step back undoes it.
      </p>
    </>
  );
}
