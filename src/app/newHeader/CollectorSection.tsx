/** Where each collector hangs and which way it blows. */
import { withAxis } from '../../../geometry';
import { always } from '../inspect/fields/always';
import { VectorField } from '../inspect/VectorField';
import { FormNumber } from './fields';
import type { Filled } from './formOf';
import { SizeStrip } from './SizeStrip';
import { stepped } from './sizing';
import { change } from './state';
import { nearestStock } from './stock';
import { type CollectorWish, collectorWish, type Wish, withCollector } from './wish';

type Props = { readonly wish: Wish; readonly filled: Filled };

export function CollectorSection({ wish, filled: { form, usual, sizes } }: Props) {
  const several = form.collectors.length > 1;
  return form.collectors.map((collector, i) => {
    const typed = collectorWish(wish, i);
    const set = (part: Partial<CollectorWish>) => change((w) => withCollector(w, i, part));
    const size = (quantity: string) => (i === 0 ? sizes?.sizes.find((s) => s.quantity === quantity) : undefined);
    return (
      <section className="new-section" key={collector.cylinders.join('-')} aria-labelledby={`new-collector-${i}`}>
        <h3 id={`new-collector-${i}`}>Collector{several && ` of ${collector.cylinders.join(', ')}`}</h3>
        <div className="new-fields">
          <VectorField
            label="Inlets at"
            meaning="Centre of the collector’s inlets, from the origin on the sketch"
            quantity="length"
            value={collector.position}
            onCommit={always((axis, value) => set({ position: withAxis(collector.position, axis, value) }))}
          />
          <VectorField
            label="Blows to"
            meaning="Direction of flow, of any length: 0, 0, −1 is straight down, 1, 0, 0 along the crankshaft"
            quantity="plain"
            value={collector.axis}
            onCommit={(axis, value) => {
              const next = withAxis(collector.axis, axis, value);
              if (next.every((x) => x === 0)) return 'At least one of the three must not be 0.';
              set({ axis: next });
              return null;
            }}
          />
          <FormNumber
            path="collectors/0/outletDiameter"
            value={typed.outletDiameter}
            usual={usual.collectors[i]!.outletDiameter}
            onPut={(outletDiameter) => set({ outletDiameter })}
            onClear={() => set({ outletDiameter: null })}
          />
          <FormNumber
            path="collectors/0/length"
            label="Length"
            value={typed.length}
            usual={usual.collectors[i]!.length}
            onPut={(length) => set({ length })}
            onClear={() => set({ length: null })}
          />
        </div>
        {(typed.position || typed.axis) && (
          <button type="button" className="link" onClick={() => set({ position: null, axis: null })}>
            Back to the usual place
          </button>
        )}
        <div className="sizes">
          <SizeStrip
            size={size('outletBore')}
            now={collector.outletDiameter}
            taken={(bore) => nearestStock(bore, wish.primary.wall, wish.display)}
            onUse={(outletDiameter) => set({ outletDiameter })}
          />
          <SizeStrip
            size={size('collectorLength')}
            now={collector.length}
            taken={stepped}
            onUse={(length) => set({ length })}
          />
        </div>
      </section>
    );
  });
}
