/** What the run kept and what it took, quietly; and what can be taken away. */
import { useState } from 'react';
import { linesOf } from '../notices';
import { savePicture } from './savePicture';
import { type Seen, useShown } from './shown';
import { facts } from './words';

export function AccountFace({ seen }: { readonly seen: Seen }) {
  const [said, setSaid] = useState<{ readonly text: string; readonly fails: boolean } | null>(null);
  const save = async (what: string, work: () => Promise<string | null>) => {
    try {
      const name = await work();
      if (name !== null) setSaid({ text: `Saved as ${name}`, fails: false });
    } catch (error) {
      setSaid({ text: `${what} was not saved: ${linesOf(error).join(' ')}`, fails: true });
    }
  };
  const state = useShown();
  return (
    <section className="waves-account" aria-label="Account">
      <dl>
        {facts(seen).map(({ name, value, unit, meaning }) => (
          <div key={name} title={meaning}>
            <dt>{name}</dt>
            <dd>
              {value} <span className="unit">{unit}</span>
            </dd>
          </div>
        ))}
      </dl>
      <div className="waves-saves">
        <p role="status" className={said?.fails ? 'fails' : 'quiet'}>
          {said?.text}
        </p>
        <button
          type="button"
          className="button"
          disabled={seen.rows === 0}
          onClick={() => void save('The picture', () => savePicture(seen, state.quantity, state.span))}
        >
          Save picture
        </button>
      </div>
    </section>
  );
}
