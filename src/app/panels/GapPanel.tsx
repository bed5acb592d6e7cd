/** The tightest place of each kind, surface to surface; a click looks at it. */
import type { CheckReport, Margin } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { Length } from '../parts/Length';
import { useShownReport } from '../route/shown';
import { useSession } from '../session';

const KINDS: readonly { readonly key: keyof CheckReport['clearance']; readonly label: string }[] = [
  { key: 'tubeToTube', label: 'Tube to tube' },
  { key: 'surroundings', label: 'To surroundings' },
  { key: 'mergeBodies', label: 'Collector bodies' },
];

/** How much of the neighbourhood to show, mm. */
const LOOK_RADIUS = 90;

export function GapPanel() {
  const clearance = useShownReport()?.clearance;
  const display = useDisplay();
  const rows = KINDS.flatMap(({ key, label }) => {
    const margin = clearance?.[key];
    return margin ? [{ label, margin }] : [];
  });
  if (rows.length === 0) return null;
  return (
    <section className="panel" aria-label="Gaps">
      <table>
        <caption>Tightest gaps</caption>
        <thead>
          <tr>
            <th scope="col">Where</th>
            <th scope="col" className="right">
              Gap <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Least <span className="unit">{display}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, margin }) => (
            <Row key={label} label={label} margin={margin} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ label, margin }: { readonly label: string; readonly margin: Margin }) {
  const look = () => {
    const { ask, setMark } = useSession.getState();
    setMark(margin.at);
    ask({ kind: 'look', at: margin.at, radius: LOOK_RADIUS });
  };
  return (
    <tr>
      <th scope="row">
        <button type="button" className="link" onClick={look} title="Look at it">
          {label}
        </button>
        <span className="between">
          {margin.between[0]} · {margin.between[1]}
        </span>
      </th>
      <td className={`right${margin.margin < 0 ? ' fails' : ''}`}>
        <Length mm={margin.gap} bare />
      </td>
      <td className="right">
        <Length mm={margin.required} bare />
      </td>
    </tr>
  );
}
