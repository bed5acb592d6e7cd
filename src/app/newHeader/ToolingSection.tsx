/** How the tube is bent, and what the starting sizes are reckoned with. */
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { NumberField } from '../inspect/NumberField';
import { FormNumber } from './fields';
import type { Usual } from './formOf';
import { change, put } from './state';
import type { ToolingWish, Wish } from './wish';

export function ToolingSection({ wish }: { readonly wish: Wish }) {
  const set = (part: Partial<ToolingWish>) => change((w) => ({ ...w, tooling: { ...w.tooling, ...part } }));
  const { tooling } = wish;
  return (
    <section className="new-section" aria-labelledby="new-tooling">
      <h3 id="new-tooling">Bending</h3>
      <div className="new-fields">
        <ChoiceField
          label="Made by"
          value={tooling.making}
          choices={[
            { value: 'welded', name: 'Welding stock bends' },
            { value: 'bent', name: 'Bending whole tubes' },
          ]}
          onCommit={always((making) => set({ making: making === 'bent' ? 'bent' : 'welded' }))}
        />
        {(['firstStraight', 'betweenStraight', 'lastStraight', 'maxBendAngle', 'maxBends'] as const).map((key) => (
          <FormNumber
            key={key}
            path={`primary/tooling/${key}`}
            value={tooling[key]}
            onPut={(value) => set({ [key]: value })}
          />
        ))}
      </div>
    </section>
  );
}

/** Speed, timing and gas: what the textbook sizes are worked out from. */
export function TuningSection({ wish, usual }: { readonly wish: Wish; readonly usual: Usual }) {
  return (
    <section className="new-section" aria-labelledby="new-tuning">
      <h3 id="new-tuning">Starting sizes are worked out for</h3>
      <div className="new-fields">
        <FormNumber
          path="rpm/0"
          label="Tuned for"
          meaning="Where the most torque is wanted; usually three quarters of the way up"
          value={wish.tuned}
          usual={usual.tuned}
          onPut={(tuned) => put({ tuned })}
          onClear={() => put({ tuned: null })}
        />
        <NumberField
          label="Exhaust opens"
          meaning="Before bottom dead centre"
          quantity="angle"
          range={{ least: 0, most: 140 }}
          value={wish.exhaustOpensBefore}
          fallback={60}
          onCommit={always((exhaustOpensBefore) => put({ exhaustOpensBefore }))}
          onClear={always(() => put({ exhaustOpensBefore: null }))}
        />
        <NumberField
          label="Exhaust closes"
          meaning="After top dead centre"
          quantity="angle"
          range={{ least: -60, most: 120 }}
          value={wish.exhaustClosesAfter}
          fallback={20}
          onCommit={always((exhaustClosesAfter) => put({ exhaustClosesAfter }))}
          onClear={always(() => put({ exhaustClosesAfter: null }))}
        />
        <NumberField
          label="Exhaust gas"
          meaning="Mean temperature along the primary"
          quantity="plain"
          unit="°C"
          range={{ least: 100, most: 1200 }}
          value={wish.gasTemperature}
          fallback={600}
          onCommit={always((gasTemperature) => put({ gasTemperature }))}
          onClear={always(() => put({ gasTemperature: null }))}
        />
      </div>
    </section>
  );
}
