/** What the builder has and what it costs: the shelf of bars and bends, saw and weld, tape and dial, money; or another design's. */
import { useState } from 'react';
import type { Header } from '../../../../geometry';
import type { Edited } from '../../../../shared/design/edit';
import type { Design } from '../../../../shared/design/types';
import { sayIn } from '../../../shop/nest/words';
import { useDisplay } from '../../actions/display';
import { act } from '../../room/edits';
import { Fields } from '../../room/sections/Fields';
import {
  addStock,
  duplicateStock,
  listStock,
  type Missing,
  missingStock,
  removeStock,
  type ShelfList,
  type Stock,
  shelfOf,
} from '../shelf';
import { MEASURE_FIELDS, MONEY_FIELDS, SAW_FIELDS, stockFields, WELD_FIELDS } from '../specs';
import { counted, moneyWords } from '../words';
import { Fold } from './Fold';
import { TakeWorkshop } from './TakeWorkshop';

type Props = { readonly design: Design; readonly header: Header };

export function WorkshopSection(of: Props) {
  const { workshop } = of.design;
  const counts = [counted(workshop?.bends?.length ?? 0, 'bend'), counted(workshop?.bars?.length ?? 0, 'bar')];
  return (
    <Fold section="workshop" name="Workshop" says={workshop ? counts.join(', ') : 'not described yet'}>
      {!workshop && (
        <p className="note make-first">
          Nothing is said of the workshop yet: usual numbers are taken, and stock is assumed to be on sale.
        </p>
      )}
      <Assumed design={of.design} />
      <Shelf {...of} list="bends" name="Stock bends" one="bend" />
      <Shelf {...of} list="bars" name="Bars" one="bar" />
      <Part name="Saw">
        <Fields {...of} specs={SAW_FIELDS} />
      </Part>
      <Part name="Welds">
        <Fields {...of} specs={WELD_FIELDS} />
      </Part>
      <Part name="Measuring and bending">
        <Fields {...of} specs={MEASURE_FIELDS} />
      </Part>
      <Part name="Money and time">
        <Fields {...of} specs={MONEY_FIELDS} />
      </Part>
      <Part name="From another design">
        <TakeWorkshop />
      </Part>
    </Fold>
  );
}

const Part = ({ name, children }: { readonly name: string; readonly children: React.ReactNode }) => (
  <fieldset className="plain make-fields">
    <legend>{name}</legend>
    {children}
  </fieldset>
);

/** What is used and on no list, each a press from being on it, to get a price of its own. */
function Assumed({ design }: { readonly design: Design }) {
  const say = sayIn(useDisplay());
  const missing = missingStock(design);
  if (missing.length === 0) return null;
  const words = ({ list, stock, tube, assumed }: Missing): string => {
    const size = say.tube(stock);
    return list === 'bends' && 'radius' in stock
      ? `Tube ${tube}: no bend of ${size} with radius ${say.length(stock.radius)} is listed; ${assumed ? 'a U is assumed to be on sale' : 'its bends are cut from nothing until one is'}.`
      : `Tube ${tube}: no bar of ${size} is listed; ${say.length((stock as { length: number }).length)} is assumed to be on sale.`;
  };
  return (
    <ul className="make-remarks" aria-label="Assumed">
      {missing.map((m) => (
        <li key={m.stock.id} className={m.assumed ? undefined : 'stops'}>
          <span>{words(m)}</span>
          <button type="button" className="link" onClick={() => act((now) => listStock(now, m), `List ${m.stock.id}`)}>
            List it
          </button>
        </li>
      ))}
    </ul>
  );
}

type ShelfProps = Props & { readonly list: ShelfList; readonly name: string; readonly one: string };

function Shelf({ design, header, list, name, one }: ShelfProps) {
  const [open, setOpen] = useState<number | null>(null);
  const entries = shelfOf(design, list);
  const made = (make: (now: Design) => Edited, label: string, index: number) => {
    act(make, label);
    setOpen(index);
  };
  return (
    <Part name={name}>
      <ul className="make-shelf" aria-label={name}>
        {entries.map((stock, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an entry is its place in the list; its name may be typed
          <li key={index}>
            <button
              type="button"
              className="room-entry make-stock"
              aria-expanded={open === index}
              onClick={() => setOpen(open === index ? null : index)}
            >
              <StockLine stock={stock} currency={design.workshop?.currency ?? ''} />
            </button>
            {open === index && (
              <div className="make-stock-fields">
                <Fields design={design} header={header} specs={stockFields(design, list, index)} />
                <div className="room-acts">
                  <button
                    type="button"
                    className="button small"
                    onClick={() => made((now) => duplicateStock(now, list, index), `Duplicate ${stock.id}`, index + 1)}
                  >
                    Duplicate
                  </button>
                  <button
                    type="button"
                    className="button small"
                    onClick={() => {
                      setOpen(null);
                      act((now) => removeStock(now, list, index), `Remove ${stock.id}`);
                    }}
                  >
                    Remove
                  </button>
                </div>
              </div>
            )}
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="chip add"
        onClick={() => made((now) => addStock(now, list), `Add a ${one}`, entries.length)}
      >
        + Add a {one}
      </button>
    </Part>
  );
}

function StockLine({ stock, currency }: { readonly stock: Stock; readonly currency: string }) {
  const display = useDisplay();
  const say = sayIn(display);
  const { count = 0, buy = true, price } = stock;
  const size =
    'radius' in stock
      ? `${stock.angle}°, radius ${say.bare(stock.radius)}, legs ${say.bare(stock.legs[0])} and ${say.bare(stock.legs[1])}`
      : `${say.length(stock.length)} long`;
  const more = buy ? (price === undefined ? 'no price' : moneyWords(price, currency)) : 'cannot be bought';
  return (
    <>
      <span className="room-entry-name">{stock.id}</span>
      <span className="make-stock-count">{count > 0 ? `${count} on the shelf` : ''}</span>
      <span className="room-entry-detail">
        {say.tube(stock)}, {size} · {more}
      </span>
    </>
  );
}
