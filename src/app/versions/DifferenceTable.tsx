/** The table of a comparison: what differs stands out, what does not is quiet. */
import type { Comparison } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { angleNumber, lengthNumber, signedNumber } from '../format';
import { type Difference, differs, sectionsOf } from './differences';

type Props = { readonly comparison: Comparison; readonly changes: readonly string[] };

export function DifferenceTable({ comparison, changes }: Props) {
  const say = useSaying();
  return (
    <>
      <p className="compare-changes">
        {comparison.same ? 'The two are the same.' : changes.length > 0 ? `Changed: ${changes.join('; ')}.` : ''}
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">{''}</th>
            <th scope="col" className="right">
              Before
            </th>
            <th scope="col" className="right">
              After
            </th>
            <th scope="col" className="right">
              Difference
            </th>
          </tr>
        </thead>
        {sectionsOf(comparison).map(({ heading, rows }) => (
          <tbody key={heading}>
            <tr className="compare-section">
              <th scope="rowgroup" colSpan={4}>
                {heading}
              </th>
            </tr>
            {rows.map((row) => (
              <tr key={row.what} className={differs(row) ? undefined : 'alike'}>
                <td>{row.what}</td>
                <td className="right number">{say.value(row, row.before)}</td>
                <td className="right number">{say.value(row, row.after)}</td>
                <td className="right number">{say.difference(row)}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </>
  );
}

function useSaying() {
  const display = useDisplay();
  const number = (unit: Difference['unit'], value: number, signed: boolean): string => {
    if (unit === 'length') return `${(signed ? signedNumber : lengthNumber)(value, display)} ${display}`;
    const text = angleNumber(value, { angle: 1, mass: 3, count: 0 }[unit]);
    const sign = signed && value > 0 ? '+' : '';
    return `${sign}${text}${{ angle: '°', mass: ' kg', count: '' }[unit]}`;
  };
  return {
    value: ({ unit }: Difference, value: number | null) => (value === null ? '–' : number(unit, value, false)),
    difference: (row: Difference) => {
      if (!differs(row)) return '=';
      return row.before === null || row.after === null ? '–' : number(row.unit, row.after - row.before, true);
    },
  };
}
