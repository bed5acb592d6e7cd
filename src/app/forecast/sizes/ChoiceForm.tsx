/** Which sizes the study goes over: lengths, bores, outlets, arrangements. Empty fields are as usual, which stands in them lightly. */
import './choiceForm.css';
import type { Design } from '../../../../shared/design/types';
import type { EngineSetup } from '../../../pulse/engine/types';
import { STUDY_SPEEDS } from '../../../pulse/forecast/speeds';
import {
  boreOf,
  fittingArrangements,
  outletsAround,
  ownOutlet,
  SIZE_RANGES,
  type StudySize,
  sketchOf,
  usualArrangements,
} from '../../../pulse/forecast/studySizes';
import { useDisplay } from '../../actions/display';
import { ARRANGEMENT_NAMES } from '../../arrangementNames';
import { TextField } from '../../inspect/TextField';
import { Choice as Switch } from '../waves/Choice';
import { type Choice, SPEED_COUNTS, setChoice, setSpeeds } from './choice';
import { listText, parseLengthList } from './lengthList';

type Props = {
  readonly id: string;
  readonly design: Design;
  readonly engine: EngineSetup;
  readonly choice: Choice;
  /** Of the wish as it is; none where it cannot be. */
  readonly sizes: readonly StudySize[];
};

export function ChoiceForm({ id, design, engine, choice, sizes }: Props) {
  const display = useDisplay();
  const usual = (of: (size: StudySize) => number): string => {
    const each = [...new Set(sizes.map(({ arrangement }) => arrangement))].map((arrangement) => {
      const all = sizes.filter((size) => size.arrangement === arrangement).map(of);
      return listText(
        [...new Set(all)].sort((a, b) => a - b),
        display,
      );
    });
    return [...new Set(each)].length === 1 ? each[0]! : 'by the rules of thumb';
  };
  const drawn =
    ownOutlet(design) ?? (sizes[0] ? sketchOf(design, engine, { ...sizes[0], outlet: null }).collector.bore : null);
  const around = drawn === null ? [] : outletsAround(drawn);
  const field = (key: 'lengths' | 'bores' | 'outlets', label: string, meaning: string, fallback: string) => {
    const list = choice[key];
    const commit = (text: string): string | null => {
      const read = parseLengthList(text, display, SIZE_RANGES[key]);
      if (!read.ok) return read.problem;
      setChoice(id, key, read.list);
      return null;
    };
    const clear = (): null => {
      setChoice(id, key, null);
      return null;
    };
    return (
      <TextField
        label={`${label}, ${display}`}
        meaning={meaning}
        explain
        value={list ? listText(list, display) : null}
        fallback={fallback}
        onCommit={commit}
        onClear={clear}
      />
    );
  };
  const fitting = fittingArrangements(design);
  const joined = new Set(
    sizes.length > 0 ? sizes.map(({ arrangement }) => arrangement) : (choice.arrangements ?? usualArrangements(design)),
  );
  return (
    <section className="gain-choice" aria-label="What is tried">
      {field(
        'lengths',
        'Primary lengths',
        'From the valve to the first joint, with commas between several',
        usual(({ length }) => length),
      )}
      {field('bores', 'Primary bores', 'Inside', usual(boreOf))}
      <div className="gain-choice-outlets">
        {field(
          'outlets',
          'Outlet bores',
          'Of the last collector. Each has a map of its own and takes as much time again',
          drawn === null ? 'as drawn' : `as it is: ${listText([drawn], display)}`,
        )}
        {around.length > 1 && (
          <button type="button" className="button small" onClick={() => setChoice(id, 'outlets', around)}>
            Try {listText(around, display)}
          </button>
        )}
      </div>
      <div className="gain-choice-speeds">
        <Switch
          label="Speeds"
          shown
          options={SPEED_COUNTS.map((key) => ({ key, name: String(key) }))}
          value={choice.speeds ?? STUDY_SPEEDS}
          onChoose={(count) => setSpeeds(id, count)}
        />
        <p className="field-about">More of them tell sizes better apart; those that are followed are used again.</p>
      </div>
      {fitting.length > 1 && (
        <fieldset className="gain-choice-joined">
          <legend>Joined</legend>
          {fitting.map((arrangement) => (
            <label key={arrangement} className="gain-run">
              <input
                type="checkbox"
                checked={joined.has(arrangement)}
                // One at least: the last one stays.
                disabled={joined.has(arrangement) && joined.size === 1}
                onChange={({ target }) =>
                  setChoice(
                    id,
                    'arrangements',
                    fitting.filter((one) => (one === arrangement ? target.checked : joined.has(one))),
                  )
                }
              />
              <span className="gain-run-name">{ARRANGEMENT_NAMES[arrangement]}</span>
            </label>
          ))}
        </fieldset>
      )}
    </section>
  );
}
