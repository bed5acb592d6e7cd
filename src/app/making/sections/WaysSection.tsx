/** Each tube group made the two ways, side by side: what it takes, what it costs, whether it can be; one press chooses. */

import { list } from '../../../shop/list';
import type { Making, TubeGroup, Way, WayTotals } from '../../../shop/making/report';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { Icon } from '../../panels/Icon';
import { chooseLegs, chooseWay } from '../edits';
import { costOfWay, counted, knownCost, moneyNumber, timeWords, WAY_NAMES } from '../words';
import { Fold } from './Fold';
import { Remarks } from './Remarks';

const WAYS: readonly Way[] = ['welded', 'bent'];

export function WaysSection({ making, busy }: { readonly making: Making; readonly busy: boolean }) {
  const impossible = making.groups.filter((g) => !g[g.chosen].possible).length;
  const says =
    impossible > 0
      ? 'cannot be made as chosen'
      : [...new Set(making.groups.map((g) => WAY_NAMES[g.chosen].toLowerCase()))].join(', ');
  return (
    <Fold section="ways" name="Ways" says={says} fails={impossible > 0} busy={busy}>
      {making.groups.length === 0 && <p className="quiet">No runner is laid that could be made yet.</p>}
      {making.groups.map((group) => (
        <Group key={group.tube} group={group} currency={making.cost.currency} />
      ))}
    </Fold>
  );
}

function Group({ group, currency }: { readonly group: TubeGroup; readonly currency: string }) {
  const money = currency === '' ? '' : currency;
  const row = (name: string, unit: string, show: (totals: WayTotals) => React.ReactNode) => (
    <tr>
      <th scope="row">
        {name} {unit !== '' && <span className="unit">{unit}</span>}
      </th>
      {WAYS.map((way) => (
        <td key={way} className={`right number${group.chosen === way ? ' chosen' : ''}`}>
          {show(group[way])}
        </td>
      ))}
    </tr>
  );
  return (
    <div className="make-group">
      <h3>
        Tube {group.tube} <span className="quiet">{list(group.runners)}</span>
      </h3>
      <table className="make-ways" aria-label={`Ways to make tube ${group.tube}`}>
        <thead>
          <tr>
            <td />
            {WAYS.map((way) => (
              <th key={way} scope="col" className={`right${group.chosen === way ? ' chosen' : ''}`}>
                <button
                  type="button"
                  className="button small make-choose"
                  aria-pressed={group.chosen === way}
                  aria-label={`${WAY_NAMES[way]}: tube ${group.tube}`}
                  onClick={() => group.chosen !== way && chooseWay(group.tube, way)}
                >
                  {group.chosen === way && <Icon name="tick" />}
                  {WAY_NAMES[way]}
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {row('Can be made', '', ({ possible }) => (possible ? 'yes' : <span className="fails">no</span>))}
          {row('Pieces', '', ({ pieces }) => pieces)}
          {row('Cuts', '', ({ cuts }) => cuts)}
          {row('Welds', '', ({ welds }) => welds)}
          {row('Bends', '', ({ bends }) => bends)}
          {row('Stock', 'kg', ({ stockMass }) => (stockMass === null ? '—' : stockMass.toFixed(1)))}
          {row('Time', '', ({ minutes }) => timeWords(minutes))}
          {row('Cost', money, (totals) => (
            <Cost totals={totals} />
          ))}
        </tbody>
      </table>
      {group.legs.length > 1 && <Legs group={group} currency={currency} />}
      {WAYS.map((way) => (
        <WayRemarks key={way} totals={group[way]} tube={group.tube} />
      ))}
    </div>
  );
}

/** Welding up with shorter legs: more welds, perhaps less to buy. */
function Legs({ group, currency }: { readonly group: TubeGroup; readonly currency: string }) {
  const display = useDisplay();
  const say = (mm: number | null) => (mm === null ? 'as stock has them' : `${lengthNumber(mm, display, 0)} ${display}`);
  const chosen = group.legs.find(({ isChosen }) => isChosen);
  return (
    <details className="room-details">
      <summary>
        Legs of pieces, welded up: <span className="quiet">{say(chosen?.longestLeg ?? null)}</span>
      </summary>
      <table aria-label={`Legs of pieces of tube ${group.tube}`}>
        <thead>
          <tr>
            <th scope="col">At most</th>
            <th scope="col" className="right">
              Buy
            </th>
            <th scope="col" className="right">
              Welds
            </th>
            <th scope="col" className="right">
              Time
            </th>
            <th scope="col" className="right">
              Cost <span className="unit">{currency}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {group.legs.map(({ longestLeg, isChosen, bought, totals }) => (
            <tr key={String(longestLeg)} className={isChosen ? 'selected' : undefined}>
              <th scope="row">
                {isChosen ? (
                  say(longestLeg)
                ) : (
                  <button type="button" className="link" onClick={() => chooseLegs(longestLeg, say(longestLeg))}>
                    {say(longestLeg)}
                  </button>
                )}
              </th>
              <td className="right number">{bought}</td>
              <td className="right number">{totals.welds}</td>
              <td className="right number">{timeWords(totals.minutes)}</td>
              <td className="right number">
                <Cost totals={totals} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">
        Shorter legs fit more pieces into a bend, and ask for more welds. The choice is the workshop’s: it holds for
        every tube.
      </p>
    </details>
  );
}

function Cost({ totals }: { readonly totals: WayTotals }) {
  const cost = costOfWay(totals);
  if (cost !== null) return moneyNumber(cost);
  const known = knownCost(totals);
  return (
    <span className="quiet" title={`Not known: ${totals.missing.join(', ')}`}>
      {known > 0 ? `over ${moneyNumber(known)}` : 'no price'}
    </span>
  );
}

function WayRemarks({ totals, tube }: { readonly totals: WayTotals; readonly tube: string }) {
  const { remarks, missing, way } = totals;
  const name = WAY_NAMES[way];
  if (remarks.length === 0 && missing.length === 0) return null;
  const stops = remarks.filter((r) => r.stops).length;
  const says = [
    ...(stops > 0 ? [`${stops} in the way`] : []),
    ...(remarks.length > stops ? [`${counted(remarks.length - stops, 'thing')} to know`] : []),
    ...(missing.length > 0 ? [`${counted(missing.length, 'price')} missing`] : []),
  ];
  return (
    <details className="room-details">
      <summary>
        {name}: <span className={stops > 0 ? 'fails' : 'quiet'}>{says.join(', ')}</span>
      </summary>
      <Remarks remarks={remarks} label={`${name}: tube ${tube}`} />
      {missing.length > 0 && <p className="note">Not known: {missing.join(', ')}.</p>}
    </details>
  );
}
