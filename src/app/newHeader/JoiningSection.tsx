/** How the runners come together, and which cylinders meet where: pairs from the firing order, a turn apart marked. */
import { joiningOf } from '../../../geometry';
import { exhaustGaps } from '../../../shared/engine/firingOrder';
import type { Arrangement } from '../../../shared/engine/form';
import { formProblems } from '../../../shared/engine/formProblems';
import { ARRANGEMENT_NAMES } from '../arrangementNames';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import type { Filled } from './formOf';
import { change } from './state';
import { type Wish, withoutPlaces } from './wish';

type Props = { readonly wish: Wish; readonly filled: Filled };

/** One crank turn: as far apart as two can fire. */
const TURN = 360;

export function JoiningSection({ wish, filled: { form } }: Props) {
  const each = wish.oneCollector ? wish.cylinders : wish.cylinders / wish.banks;
  const fits = (count: number) => each % count === 0 && each > count;
  const severalUsual = wish.banks === 2 || (wish.cylinders === 6 && wish.arrangement === 'all-into-one');
  return (
    <section className="new-section" aria-labelledby="new-joining">
      <h3 id="new-joining">Coming together</h3>
      <div className="new-fields">
        <ChoiceField
          label="Arrangement"
          value={wish.arrangement}
          choices={[
            { value: 'all-into-one', name: ARRANGEMENT_NAMES['all-into-one'] },
            { value: 'pairs-then-one', name: ARRANGEMENT_NAMES['pairs-then-one'], disabled: !fits(2) },
            { value: 'threes-then-one', name: ARRANGEMENT_NAMES['threes-then-one'], disabled: !fits(3) },
          ]}
          onCommit={always((chosen) => change((w) => withoutPlaces(w, { arrangement: chosen as Arrangement })))}
        />
        {severalUsual && (
          <ChoiceField
            label="Collectors"
            value={wish.oneCollector ? 'one' : 'usual'}
            choices={[
              { value: 'usual', name: wish.banks === 2 ? 'One for each bank' : 'Two, three cylinders each' },
              { value: 'one', name: 'One for all' },
            ]}
            onCommit={always((chosen) => change((w) => withoutPlaces(w, { oneCollector: chosen === 'one' })))}
          />
        )}
      </div>
      <Meetings form={form} />
    </section>
  );
}

function Meetings({ form }: { readonly form: Filled['form'] }) {
  if (formProblems(form).length > 0) return null;
  return (
    <ul className="new-pairs">
      {joiningOf(form).flatMap(({ collector, first, cylinders }) =>
        first.length === 0
          ? [
              <li key={collector}>
                <strong>{cylinders.join(' + ')}</strong> into the {collector}
                {cylinders.length > 1 && `, ${exhaustGaps(form.firingOrder, cylinders).join('°, ')}° apart`}
              </li>,
            ]
          : first.map(({ merge, cylinders: pair, apart }) => (
              <li key={merge}>
                <strong>{pair.join(' + ')}</strong> first, {apart}° apart
                {apart === TURN && <span className="new-turn">a full turn: even</span>}
              </li>
            )),
      )}
    </ul>
  );
}
