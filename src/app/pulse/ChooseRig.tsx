/** Which rig: one of the examples, or a file from disk; the same choice as a list of cards while there is nothing to see. */
import { useEffect, useRef, useState } from 'react';
import { linesOf } from '../notices';
import { fetchRig, listRigs, type RigExample, textOf } from './examples';
import { followRig, refuse, useShown } from './shown';

/** Whoever chooses last has the last word, whatever is read first. */
let choosing = 0;

async function followRead(name: string, reading: Promise<string>): Promise<void> {
  const own = ++choosing;
  try {
    const text = await reading;
    if (own === choosing) followRig({ name, text });
  } catch (error) {
    if (own === choosing) refuse(linesOf(error).join(' '));
  }
}

/** Opens what was chosen from disk or dropped. */
export async function followFile(file: File | undefined): Promise<void> {
  if (file) await followRead(file.name, textOf(file));
}

const followExample = ({ file, title }: RigExample): Promise<void> => followRead(title, fetchRig(file));

export type Rigs = { readonly rigs: readonly RigExample[]; readonly trouble: string | null };

export function useRigs(): Rigs {
  const [found, setFound] = useState<Rigs>({ rigs: [], trouble: null });
  useEffect(() => {
    listRigs().then(
      (rigs) => setFound({ rigs, trouble: null }),
      (error) => setFound({ rigs: [], trouble: linesOf(error).join(' ') }),
    );
  }, []);
  return found;
}

export function ChooseRig({ rigs }: Pick<Rigs, 'rigs'>) {
  const name = useShown((s) => s.asked?.name ?? '');
  const chosen = rigs.find(({ title }) => title === name);
  return (
    <div className="waves-choose">
      <select
        aria-label="Rig"
        value={chosen?.file ?? ''}
        onChange={({ target }) => {
          const rig = rigs.find(({ file }) => file === target.value);
          if (rig) void followExample(rig);
        }}
      >
        {!chosen && <option value="">{name || 'Choose a rig'}</option>}
        {rigs.map(({ file, title }) => (
          <option key={file} value={file}>
            {title}
          </option>
        ))}
      </select>
      <OpenFile />
    </div>
  );
}

function OpenFile() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="button" onClick={() => input.current?.click()}>
        Open a rig…
      </button>
      <input
        ref={input}
        type="file"
        accept=".json"
        hidden
        aria-label="Rig file"
        onChange={({ target }) => {
          void followFile(target.files?.[0]);
          // So that the same file, mended meanwhile, can be chosen again.
          target.value = '';
        }}
      />
    </>
  );
}

export function RigCards({ rigs, trouble }: Rigs) {
  return (
    <div className="waves-cards">
      <p>
        A rig is a network of pipes and what stands at their ends. Choose one, and see how pressure travels through it.
        Your own: open its file, or drop it here.
      </p>
      {trouble && <p className="fails">{trouble}</p>}
      <ul aria-label="Example rigs">
        {rigs.map((rig) => (
          <li key={rig.file}>
            <button type="button" onClick={() => void followExample(rig)}>
              <b>{rig.title}</b>
              <span>{rig.about}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
