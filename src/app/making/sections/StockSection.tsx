/** What is bought and how it is cut: each bar and bend as a strip with its pieces, the bound beside the plan, the buy list. */
import type { Making, NestPart, UsedStock } from '../../../shop/making/report';
import { bentFrom, isBend, placesOf, stockLength } from '../../../shop/stockLayout';
import { useDisplay } from '../../actions/display';
import { lengthNumber } from '../../format';
import { act } from '../../room/edits';
import { useMakeLook } from '../look';
import { listStock } from '../shelf';
import { counted, moneyNumber, moneyWords } from '../words';
import { Fold } from './Fold';
import { Remarks } from './Remarks';

export function StockSection({ making, busy }: { readonly making: Making; readonly busy: boolean }) {
  const { plan, cost } = making;
  const bought = plan.buy.reduce((sum, line) => sum + line.count, 0);
  return (
    <Fold
      section="stock"
      name="Stock"
      says={
        bought === 0
          ? 'nothing to buy'
          : `buy ${bought}${plan.cost === null ? '' : `, ${moneyWords(plan.cost, cost.currency)}`}`
      }
      fails={plan.remarks.some((r) => r.stops)}
      busy={busy}
    >
      <Remarks remarks={plan.remarks} label="About the stock" />
      <BuyTable making={making} />
      {plan.parts.map((part) => (
        <Part key={`${part.kind} ${part.what}`} part={part} currency={cost.currency} />
      ))}
    </Fold>
  );
}

function BuyTable({ making: { plan, cost } }: { readonly making: Making }) {
  if (plan.buy.length === 0) return <p className="quiet">Everything is cut from what lies on the shelf.</p>;
  return (
    <table aria-label="To buy">
      <thead>
        <tr>
          <th scope="col">Buy</th>
          <th scope="col" className="right" />
          <th scope="col" className="right">
            Each <span className="unit">{cost.currency}</span>
          </th>
          <th scope="col" className="right">
            Cost <span className="unit">{cost.currency}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {plan.buy.map((line) => (
          <tr key={line.stock}>
            <th scope="row">
              {line.stock} {line.assumed && <span className="make-assumed">assumed</span>}
              <div className="quiet make-what">{line.what}</div>
              {line.assumed && <ListIt stock={stockOf(plan, line.stock)} />}
            </th>
            <td className="right number">{line.count}</td>
            <td className="right number">{line.each === null ? '—' : moneyNumber(line.each)}</td>
            <td className="right number">{line.cost === null ? '—' : moneyNumber(line.cost)}</td>
          </tr>
        ))}
      </tbody>
      {plan.cost !== null && (
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              In all
            </th>
            <td className="right number">{moneyNumber(plan.cost)}</td>
          </tr>
        </tfoot>
      )}
    </table>
  );
}

/** The stock itself, as a plan knows it that cuts from it. */
const stockOf = (plan: Making['plan'], id: string): UsedStock | undefined =>
  plan.parts.flatMap(({ used }) => used).find(({ stock }) => stock === id);

/** Onto the workshop's list, to get a price of its own. */
function ListIt({ stock }: { readonly stock: UsedStock | undefined }) {
  if (!stock) return null;
  const list = stock.kind === 'bar' ? 'bars' : 'bends';
  return (
    <button
      type="button"
      className="link"
      onClick={() => act((now) => listStock(now, { list, stock: stock.of }), `List ${stock.stock}`)}
    >
      Put it on the workshop’s list
    </button>
  );
}

function Part({ part, currency }: { readonly part: NestPart; readonly currency: string }) {
  const display = useDisplay();
  const say = (value: number): string =>
    part.least === 'money'
      ? moneyWords(value, currency)
      : part.least.startsWith('length')
        ? `${lengthNumber(value, display, 0)} ${display}`
        : String(Math.round(value * 100) / 100);
  return (
    <div className="make-part">
      <h3>{capital(part.what)}</h3>
      <p className="quiet">
        {counted(part.used.length, part.kind)}. Least {part.least}: {say(part.value)}
        {part.proved ? ', proved the least there can be.' : `; no plan can have less than ${say(part.bound)}.`}
      </p>
      {part.used.map((used) => (
        <Strip key={`${used.stock} ${used.number} ${used.source}`} used={used} />
      ))}
    </div>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function Strip({ used }: { readonly used: UsedStock }) {
  const display = useDisplay();
  const [all, arc] = [stockLength(used.of), bentFrom(used.of)];
  const lit = useMakeLook((s) => (s.meant?.joint ? undefined : s.meant?.piece));
  const share = (mm: number) => `${((100 * mm) / all).toFixed(3)}%`;
  const left = isBend(used.of) ? `${used.left.toFixed(1)}°` : `${lengthNumber(used.left, display, 0)} ${display}`;
  return (
    <figure className="make-strip">
      <figcaption>
        <span>
          {used.stock} no. {used.number}
        </span>
        <span className="quiet">
          {used.source === 'shelf' ? 'on the shelf' : 'bought'}, {left} left
        </span>
      </figcaption>
      <div className="make-bar">
        {arc && <i className="make-arc" style={{ left: share(arc[0]), width: share(arc[1] - arc[0]) }} />}
        {placesOf(used).map(({ piece, from, to }) => (
          <span
            key={piece}
            className={`make-cut${lit === piece ? ' lit' : ''}`}
            style={{ left: share(from), width: share(to - from) }}
            title={`${piece}: ${lengthNumber(to - from, display, 1)} ${display} along its middle`}
          >
            {piece}
          </span>
        ))}
      </div>
    </figure>
  );
}
