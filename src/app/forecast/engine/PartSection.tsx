/** A part that is given whole or not at all: what is taken in its place and why, with the way to give it; else its numbers. */
import { documents, useDocument } from '../../document';
import { assumedKey } from '../assumed';
import { usualPart } from '../ground';
import { assumedFor, setAt, valueAt } from './given';
import { Section } from './Section';
import { type FieldWish, SetupField, TakenWords } from './SetupField';
import { useAssumed } from './useAssumed';

type Props = {
  readonly title: string;
  readonly path: string;
  readonly fields: readonly FieldWish[];
  readonly note?: string;
};

export function PartSection({ title, path, fields, note }: Props) {
  const given = useDocument((s) => s.settled !== null && valueAt(s.settled, path) !== undefined);
  const assumed = useAssumed();
  const whole = assumedFor(assumed, path);
  const single = assumed.filter((a) => a.path.startsWith(`${path}/`));
  const give = () => {
    const { settled } = documents.store.getState();
    const part = settled && usualPart(path, settled);
    if (part) setAt(path, part, `Give the ${title.toLowerCase()}`);
  };
  return (
    <Section title={title}>
      {given ? (
        <>
          {fields.map((field) => (
            <SetupField key={field.path} {...field} />
          ))}
          {note && <p className="gain-taken">{note}</p>}
          <button
            type="button"
            className="button small"
            onClick={() => setAt(path, undefined, `Take the ${title.toLowerCase()} as usual`)}
          >
            Take as usual
          </button>
        </>
      ) : (
        <div data-path={path}>
          {whole && <TakenWords taken={whole.taken} why={whole.why} />}
          {single.map(({ path: at, name, taken, why }) => (
            <TakenWords key={assumedKey({ path: at, name })} taken={`${name.toLowerCase()} ${taken}`} why={why} />
          ))}
          {!whole && single.length === 0 && <p className="quiet">Not given.</p>}
          <button type="button" className="button small" onClick={give}>
            Give it yourself
          </button>
        </div>
      )}
    </Section>
  );
}
