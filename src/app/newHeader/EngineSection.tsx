/** The engine: cylinders, banks, bore and stroke, speeds, firing order. */
import { usualEngine } from '../../../shared/engine/usualEngines';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { NumberField } from '../inspect/NumberField';
import { TextField } from '../inspect/TextField';
import { FormNumber } from './fields';
import type { Filled } from './formOf';
import { orderProblem, ordersFor, readOrder } from './orders';
import { change, put } from './state';
import type { Wish } from './wish';
import { withEngine } from './wish';

type Props = { readonly wish: Wish; readonly filled: Filled };

const COUNTS = [1, 2, 3, 4, 5, 6, 8, 10, 12];

export function EngineSection({ wish, filled: { form, usual } }: Props) {
  return (
    <section className="new-section" aria-labelledby="new-engine">
      <h3 id="new-engine">Engine</h3>
      <div className="new-fields">
        <ChoiceField
          label="Cylinders"
          value={String(wish.cylinders)}
          choices={COUNTS.map((n) => ({ value: String(n), name: String(n) }))}
          onCommit={always((n) => change((w) => withEngine(w, { cylinders: Number(n) })))}
        />
        <ChoiceField
          label="Banks"
          value={String(wish.banks)}
          choices={[
            { value: '1', name: 'One, in line' },
            { value: '2', name: 'Two', disabled: wish.cylinders < 2 },
          ]}
          onCommit={always((n) => change((w) => withEngine(w, { banks: n === '2' ? 2 : 1 })))}
        />
        <FormNumber path="bore" value={wish.bore} onPut={(bore) => put({ bore })} />
        <FormNumber path="stroke" value={wish.stroke} onPut={(stroke) => put({ stroke })} />
        <FormNumber
          path="rpm/0"
          label="Used from"
          value={wish.rpm[0]}
          onPut={(low) => change((w) => ({ ...w, rpm: [low, w.rpm[1]] }))}
        />
        <FormNumber
          path="rpm/1"
          label="Used to"
          value={wish.rpm[1]}
          onPut={(high) => change((w) => ({ ...w, rpm: [w.rpm[0], high] }))}
        />
        {wish.banks === 2 && (
          <NumberField
            label="Between banks"
            meaning="From one bank’s cylinders to the other’s; 180: flat"
            quantity="angle"
            range={{ least: 15, most: 180 }}
            value={wish.vee}
            fallback={usual.vee}
            onCommit={always((vee) => put({ vee, collectors: [] }))}
            onClear={always(() => put({ vee: null }))}
          />
        )}
        <TextField
          label="Firing order"
          meaning={
            usualEngine(wish.cylinders, wish.banks)
              ? 'Cylinders in the order they fire; makers number them differently'
              : 'Cylinders in the order they fire: none is usual for this engine, so type yours'
          }
          value={wish.firingOrder?.join('-') ?? null}
          fallback={usual.firingOrder.join('-')}
          offers={ordersFor(wish.cylinders).map((order) => order.join('-'))}
          onCommit={(text) => {
            const order = readOrder(text);
            const problem = orderProblem(order, wish.cylinders);
            if (problem === null) put({ firingOrder: order });
            return problem;
          }}
          onClear={always(() => put({ firingOrder: null }))}
        />
      </div>
      {wish.banks === 2 && (
        <p className="new-note">
          Bank 1 on +Y: {form.banks[0]!.cylinders.join(', ')}. Bank 2 on −Y: {form.banks[1]!.cylinders.join(', ')}.
        </p>
      )}
    </section>
  );
}
