/** What the run kept and what it took, quietly; and what can be taken away. */
import { useEffect, useState } from 'react';
import { linesOf } from '../notices';
import { savePicture } from './savePicture';
import { saveProbes, saveProfile } from './saveTables';
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
  // Said of one rig, it is no news beside another.
  const { rig } = seen;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the rig is what it stands and falls with
  useEffect(() => setSaid(null), [rig]);
  return (
    <section className="waves-account" aria-label="Account">
      <dl>
        {facts(seen).map(({ name, value, power, unit, meaning, ofClock }) => (
          <div key={name} title={meaning} className={ofClock ? 'waves-clock' : undefined}>
            <dt>{name}</dt>
            <dd>
              {value}
              {power !== null && <sup>{power}</sup>} <span className="unit">{unit}</span>
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
          disabled={seen.run.probes.length === 0 || seen.run.times.length === 0}
          title="Every probe at every sample, as CSV"
          onClick={() => void save('The table of the probes', () => saveProbes(seen))}
        >
          Save CSV
        </button>
        <button
          type="button"
          className="button"
          title="Every cell of every pipe at the last instant, as CSV"
          onClick={() => void save('The table of the last instant', () => saveProfile(seen))}
        >
          Save last instant
        </button>
        <button
          type="button"
          className="button"
          title="What the picture shows, as PNG"
          disabled={seen.rows === 0}
          onClick={() => void save('The picture', () => savePicture(seen, state.quantity, state.span))}
        >
          Save picture
        </button>
      </div>
    </section>
  );
}
