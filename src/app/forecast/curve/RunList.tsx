/** Which runs are shown, how far each is, what each comes to; and why one cannot be followed, with the way to mend it. */
import { useDisplay } from '../../actions/display';
import { useTheme } from '../../colours';
import { useDocument } from '../../document';
import { Swatch } from '../../parts/Swatch';
import { useShelf } from '../../shelf/browserShelf';
import { titleOf } from '../../shelf/names';
import { KINDS, nameOf, otherKind } from '../kinds';
import { isAnswer, numberText, readOff, wordsFor } from '../quantities';
import { Refusals } from '../Refusals';
import { refusalLine } from '../refusalWords';
import type { Run, RunKind } from '../runs';
import { useShown } from '../shown';
import { paintFor } from './series';

type Props = { readonly onChoose: (kind: RunKind, wanted: boolean) => void };

export function RunList({ onChoose }: Props) {
  const { chosen, runs, barred } = useShown();
  const designs = useShelf((s) => s.designs);
  const open = useDocument((s) => s.id);
  const others = chosen.filter((kind) => kind.startsWith('other/'));
  const kinds = [...KINDS.map(({ kind }) => kind), ...others];
  const left = designs.filter(({ id }) => id !== open && !chosen.includes(otherKind(id)));
  const ofWhich = (note: string): string =>
    chosen
      .filter((kind) => runs.get(kind)?.subject.notes.includes(note))
      .map((kind) => nameOf(kind, designs))
      .join(', ');
  // What is true of several is said once.
  const notes = [...new Set(chosen.flatMap((kind) => runs.get(kind)?.subject.notes ?? []))];
  return (
    <fieldset className="gain-runs">
      <legend>Followed</legend>
      <ul>
        {kinds.map((kind) => (
          <li key={kind}>
            <RunRow
              kind={kind}
              name={nameOf(kind, designs)}
              about={KINDS.find((k) => k.kind === kind)?.about ?? 'its own engine on its own header'}
              wanted={chosen.includes(kind)}
              run={runs.get(kind) ?? null}
              onChoose={onChoose}
            />
            {chosen.includes(kind) && barred.has(kind) && <Why kind={kind} chosen={chosen} barred={barred} />}
          </li>
        ))}
      </ul>
      {notes.map((note) => (
        <p key={note} className="gain-note">
          {ofWhich(note)}: {note}
        </p>
      ))}
      {left.length > 0 && (
        <select
          className="filling"
          aria-label="Follow another design too"
          value=""
          onChange={({ target }) => target.value && onChoose(otherKind(target.value), true)}
        >
          <option value="">Another design…</option>
          {left.map((design) => (
            <option key={design.id} value={design.id}>
              {titleOf(design)}
            </option>
          ))}
        </select>
      )}
    </fieldset>
  );
}

type WhyProps = { readonly kind: RunKind } & Pick<ReturnType<typeof useShown.getState>, 'chosen' | 'barred'>;

/** What bars several, such as an engine without a bore, is said once. */
function Why({ kind, chosen, barred }: WhyProps) {
  const said = new Set(
    chosen.slice(0, chosen.indexOf(kind)).flatMap((other) => barred.get(other)?.map(refusalLine) ?? []),
  );
  const own = barred.get(kind)!.filter((refusal) => !said.has(refusalLine(refusal)));
  return own.length > 0 ? <Refusals refusals={own} /> : <p className="gain-note">Not followed, for the same reason.</p>;
}

type RowProps = {
  readonly kind: RunKind;
  readonly name: string;
  readonly about: string;
  readonly wanted: boolean;
  readonly run: Run | null;
  readonly onChoose: (kind: RunKind, wanted: boolean) => void;
};

function RunRow({ kind, name, about, wanted, run, onChoose }: RowProps) {
  const theme = useTheme();
  return (
    <label className="gain-run" title={about}>
      <input type="checkbox" checked={wanted} onChange={({ target }) => onChoose(kind, target.checked)} />
      {wanted ? <Swatch paint={paintFor(kind, theme)} /> : <span className="gain-no-swatch" />}
      <span className="gain-run-name">{name}</span>
      {wanted && run && <Standing run={run} />}
    </label>
  );
}

/** How far it is, then its highest torque. While it is refined that may still move a little. */
function Standing({ run }: { readonly run: Run }) {
  const display = useDisplay();
  const told = run.told.filter((t) => t !== null).length;
  if (told < run.told.length)
    return (
      <span className="quiet gain-run-says">
        {told} of {run.told.length}
      </span>
    );
  const answers = run.told.filter(isAnswer);
  const best = answers.reduce((a, b) => (b.torque > a.torque ? b : a), answers[0]!);
  if (!best) return <span className="fails gain-run-says">none could be followed</span>;
  return (
    <span className="gain-run-says">
      {numberText(readOff('torque', best, display), 0)} <span className="unit">{wordsFor('torque', display).unit}</span>{' '}
      <span className="quiet">at {best.rpm}</span>
    </span>
  );
}
