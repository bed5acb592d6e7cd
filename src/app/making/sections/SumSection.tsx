/** What the whole header comes to: mass and its middle, cost, and the bill of materials, whose prices can be typed. */
import { setFields } from '../../../../shared/design/edit';
import { PRICE } from '../../../../shared/design/ranges';
import type { Making, MaterialLine } from '../../../shop/making/report';
import { applyEdit } from '../../inspect/applyEdit';
import { NumberField } from '../../inspect/NumberField';
import { Length } from '../../parts/Length';
import { moneyNumber, moneyWords } from '../words';
import { Fold } from './Fold';

export function SumSection({ making, busy }: { readonly making: Making; readonly busy: boolean }) {
  const { cost, mass } = making;
  const says = `${mass.total.toFixed(2)} kg${cost.total === null ? '' : `, ${moneyWords(cost.total, cost.currency)}`}`;
  return (
    <Fold section="sum" name="Mass and cost" says={says} busy={busy}>
      <dl className="make-facts">
        <dt>Mass</dt>
        <dd className="number">
          {mass.total.toFixed(2)} <span className="unit">kg</span>
          {mass.unknown.length > 0 && <span className="quiet"> without {mass.unknown.join(', ')}</span>}
        </dd>
        <dt>Centre of mass</dt>
        <dd>
          {mass.centre.map((x, i) => (
            <span key={'XYZ'[i]} className="make-axis">
              <span className="quiet">{'XYZ'[i]}</span> <Length mm={x} decimals={1} />
            </span>
          ))}
        </dd>
        <dt>Cost</dt>
        <dd className="number">
          {cost.total === null
            ? `over ${moneyWords(cost.known, cost.currency)}`
            : moneyWords(cost.total, cost.currency)}
        </dd>
      </dl>
      {cost.missing.length > 0 && <p className="note">Not known, and so not counted: {cost.missing.join(', ')}.</p>}
      <Bill lines={making.materials} currency={cost.currency} />
    </Fold>
  );
}

function Bill({ lines, currency }: { readonly lines: readonly MaterialLine[]; readonly currency: string }) {
  return (
    <table className="make-bill">
      <caption>Bill of materials</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col" className="right" />
          <th scope="col" className="right">
            Mass <span className="unit">kg</span>
          </th>
          <th scope="col" className="right">
            Each <span className="unit">{currency}</span>
          </th>
          <th scope="col" className="right">
            Cost
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.name}>
            <th scope="row">
              {line.name}
              <div className="quiet make-what">{line.what}</div>
            </th>
            <td className="right number">{line.quantity}</td>
            <td className="right number">{line.mass === null ? '—' : line.mass.toFixed(3)}</td>
            <td className="right">{line.ofStock ? <span className="quiet">of stock</span> : <Price line={line} />}</td>
            <td className="right number">{line.cost === null ? '' : moneyNumber(line.cost)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Price({ line: { name, each } }: { readonly line: MaterialLine }) {
  const put = (value: number | undefined) =>
    applyEdit(
      (now) => setFields(now, [[['workshop', 'prices', name], value]]),
      `Price of ${name}: ${value === undefined ? 'none' : value}`,
      `workshop/prices/${name}`,
    );
  return (
    <NumberField
      bare
      label={`Price of ${name}`}
      quantity="plain"
      value={each}
      range={PRICE}
      fallback="price"
      onCommit={put}
      onClear={() => put(undefined)}
    />
  );
}
