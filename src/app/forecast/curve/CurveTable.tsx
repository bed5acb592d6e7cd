/** One run as a table, a speed a row; beside the torque, what it is over the other run. */
import type { SpeedAnswer } from '../../../pulse/forecast/types';
import { useDisplay } from '../../actions/display';
import { isAnswer, numberText, QUANTITIES, readOff, signedText, wordsFor } from '../quantities';
import { answerAt, type Run } from '../runs';

type Props = {
  readonly run: Run;
  readonly over: Run | null;
  readonly marked: number | null;
  readonly onPick: (rpm: number) => void;
};

export function CurveTable({ run, over, marked, onPick }: Props) {
  const display = useDisplay();
  const torque = wordsFor('torque', display);
  return (
    <table className="gain-table" aria-label={`${run.subject.title}, speed by speed`}>
      <thead>
        <tr>
          <th className="right">
            Speed <span className="unit">rpm</span>
          </th>
          {QUANTITIES.map((quantity) => {
            const { short, unit, name, meaning } = wordsFor(quantity, display);
            const head = (
              <th key={quantity} className="right" title={`${name}: ${meaning}`}>
                {short} <span className="unit">{unit}</span>
              </th>
            );
            if (quantity !== 'torque' || !over) return head;
            return [
              head,
              <th key="over" className="right" title={`Torque over ${over.subject.title}`}>
                Gain <span className="unit">{torque.unit}</span>
              </th>,
            ];
          })}
          <th>
            <span className="unseen">Remarks</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {run.speeds.map((rpm, k) => {
          const told = run.told[k] ?? null;
          if (!told) return <Waiting key={rpm} rpm={rpm} />;
          if ('failed' in told) return <Failed key={rpm} rpm={rpm} why={told.failed} />;
          const other = over && answerAt(over, rpm);
          return (
            <tr key={rpm} className={rpm === marked ? 'hovered' : undefined}>
              <th scope="row" className="right">
                <button
                  type="button"
                  className="gain-speed"
                  aria-label={`Look at ${rpm} rpm closely`}
                  onClick={() => onPick(rpm)}
                >
                  {rpm}
                </button>
              </th>
              {QUANTITIES.map((quantity) => {
                const { decimals } = wordsFor(quantity, display);
                const cell = (
                  <td key={quantity} className="right number">
                    {numberText(readOff(quantity, told, display), decimals)}
                  </td>
                );
                if (quantity !== 'torque' || !over) return cell;
                return [
                  cell,
                  <td key="over" className="right number">
                    {isAnswer(other) ? signedText((told.torque - other.torque) * torque.factor, 1) : '–'}
                  </td>,
                ];
              })}
              <td className="gain-remarks">{remarksOn(told, run.final[k]!).join('; ')}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What coarse cells blur is not told of each speed that is to be refined anyhow. */
function remarksOn({ settled, doubts }: SpeedAnswer, final: boolean): readonly string[] {
  const said = doubts.filter(({ kind }) => final || kind !== 'coarse').map(({ message }) => message);
  if (!final) return ['coarse so far', ...said];
  return settled ? said : ['not settled', ...said];
}

function Waiting({ rpm }: { readonly rpm: number }) {
  return (
    <tr className="quiet">
      <th scope="row" className="right">
        {rpm}
      </th>
      <td colSpan={8}>…</td>
    </tr>
  );
}

function Failed({ rpm, why }: { readonly rpm: number; readonly why: string }) {
  return (
    <tr>
      <th scope="row" className="right">
        {rpm}
      </th>
      <td colSpan={8} className="fails">
        {why}
      </td>
    </tr>
  );
}
