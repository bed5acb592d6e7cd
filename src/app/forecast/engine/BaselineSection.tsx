/** A torque curve that was measured on the engine: pasted or typed, brought to the crank, and what the engine is fitted to. */
import { useState } from 'react';
import type { Baseline } from '../../../../shared/design/types';
import { documents, useDocument } from '../../document';
import { readMeasured, TORQUE_UNITS, type TorqueUnit, writeMeasured } from './baselineText';
import { FitRow } from './FitRow';
import { setBaselineTo } from './given';
import { Section } from './Section';

/** Often taken between crank and driven wheels; common practice, no source. */
const WHEEL_LOSS = 15;

export function BaselineSection() {
  const baseline = useDocument((s) => s.settled?.engine?.baseline);
  const json = JSON.stringify(baseline);
  /** What was taken from the entry itself: its text and unit stay as they were typed. */
  const [made, setMade] = useState<string | undefined>(json);
  // The text belongs to the curve that it was made of: another curve, by undo for one, is another text.
  return (
    <Section title="Measured curve">
      <p className="quiet">
        Torque over speed, measured on this engine before anything was changed. With it the engine can be fitted, so
        that heights can be trusted more too. Until then the forecast is not calibrated.
      </p>
      <Entry key={made === json ? 'made' : json} baseline={baseline} onTaken={setMade} />
      <FitRow />
    </Section>
  );
}

type EntryProps = {
  readonly baseline: Baseline | undefined;
  /** Told the curve as it stands in the design then. */
  readonly onTaken: (json: string | undefined) => void;
};

/** Chosen last, for whatever curve comes up next. */
let lastUnit: TorqueUnit = 'N m';

function Entry({ baseline, onTaken }: EntryProps) {
  const [unit, setUnit] = useState<TorqueUnit>(lastUnit);
  const [text, setText] = useState(baseline ? writeMeasured(baseline.points, unit) : '');
  const [on, setOn] = useState<'cast' | 'header'>(baseline?.on ?? 'cast');
  const [loss, setLoss] = useState(String(baseline?.loss ?? 0));
  const [problem, setProblem] = useState<string | null>(null);
  const atWheels = Number(loss) !== 0;
  const take = () => {
    const measured = readMeasured(text, unit);
    if (!measured.ok) return setProblem(measured.problem);
    const lost = Number(loss.replace(',', '.'));
    if (!(lost >= 0 && lost <= 50)) return setProblem('What is lost to the wheels is wanted as 0 to 50 percent.');
    const refused = setBaselineTo(
      { on, points: measured.points, ...(lost > 0 && { loss: lost }) },
      baseline ? 'Change the measured curve' : 'Give a measured curve',
    );
    setProblem(refused);
    if (refused === null) onTaken(JSON.stringify(documents.store.getState().settled?.engine?.baseline));
  };
  const change = (next: TorqueUnit) => {
    // What was read already is shown in the new unit; what is only typed is taken to be in it.
    if (baseline && text === writeMeasured(baseline.points, unit)) setText(writeMeasured(baseline.points, next));
    lastUnit = next;
    setUnit(next);
  };
  return (
    <div className="gain-baseline" data-path="engine/baseline">
      <label className="gain-baseline-text">
        <span className="field-label">A line for each speed: rpm, torque</span>
        <textarea
          rows={7}
          spellCheck={false}
          value={text}
          placeholder={'2000 118\n3000 142\n4000 155'}
          aria-invalid={problem !== null}
          aria-describedby="gain-baseline-problem"
          onChange={({ target }) => setText(target.value)}
          onKeyDown={(event) => event.stopPropagation()}
        />
      </label>
      <div className="gain-baseline-how">
        <label>
          <span className="field-label">Torque in</span>
          <select className="entry-choice" value={unit} onChange={({ target }) => change(target.value as TorqueUnit)}>
            {TORQUE_UNITS.map((name) => (
              <option key={name}>{name}</option>
            ))}
          </select>
        </label>
        <label>
          <span className="field-label">Measured with</span>
          <select
            className="entry-choice"
            value={on}
            onChange={({ target }) => setOn(target.value as 'cast' | 'header')}
          >
            <option value="cast">the cast manifold</option>
            <option value="header">this header</option>
          </select>
        </label>
        <label>
          <span className="field-label">Measured at</span>
          <select
            className="entry-choice"
            value={atWheels ? 'wheels' : 'crank'}
            onChange={({ target }) => setLoss(target.value === 'wheels' ? String(WHEEL_LOSS) : '0')}
          >
            <option value="crank">the crank</option>
            <option value="wheels">the wheels</option>
          </select>
        </label>
        {atWheels && (
          <label data-path="engine/baseline/loss">
            <span className="field-label">Lost on the way</span>
            <span className="entry">
              <input
                className="entry-text"
                inputMode="decimal"
                value={loss}
                onChange={({ target }) => setLoss(target.value)}
                onKeyDown={(event) => event.stopPropagation()}
              />
              <span className="unit entry-unit">%</span>
            </span>
          </label>
        )}
      </div>
      <p id="gain-baseline-problem" role="status" className="fails">
        {problem}
      </p>
      <p className="gain-acts">
        <button type="button" className="button" onClick={take} disabled={text.trim() === ''}>
          Take this curve
        </button>{' '}
        {baseline && (
          <button
            type="button"
            className="button"
            onClick={() => setProblem(setBaselineTo(undefined, 'Take the measured curve away'))}
          >
            Take it away
          </button>
        )}
      </p>
    </div>
  );
}
