/** A tube and its runners' length: from stock, from the textbooks' starting sizes, or typed. */
import type { Quantity } from '../../../shared/engine/sizing/startingSizes';
import { MATERIALS } from '../../../shared/stock/materials';
import { METRIC_WALLS } from '../../../shared/stock/tubes';
import { formatLength } from '../../../shared/units';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { FormNumber } from './fields';
import type { Filled } from './formOf';
import { SizeStrip } from './SizeStrip';
import { stepped } from './sizing';
import { change, put } from './state';
import { nearestStock, stockDiameters } from './stock';
import type { TubeWish, Wish } from './wish';

type Props = { readonly which: 'primary' | 'secondary'; readonly wish: Wish; readonly filled: Filled };

export function TubeSection({ which, wish, filled: { form, usual, sizes } }: Props) {
  const tube = wish[which];
  const now = form[which]!;
  const set = (part: Partial<TubeWish>) => change((w) => ({ ...w, [which]: { ...w[which], ...part } }));
  const size = (quantity: Quantity) => sizes?.sizes.find((s) => s.quantity === quantity);
  const diameters = stockDiameters(wish.display);
  const wall = tube.wall;
  return (
    <section className="new-section" aria-labelledby={`new-${which}`}>
      <h3 id={`new-${which}`}>{which === 'primary' ? 'Primaries' : 'Secondaries'}</h3>
      <div className="new-fields">
        <ChoiceField
          label="Stock tube"
          meaning="Sizes that round exhaust tube is sold in"
          value={diameters.includes(now.tube.outsideDiameter) ? String(now.tube.outsideDiameter) : 'own'}
          choices={[
            ...diameters.map((d) => ({
              value: String(d),
              name: formatLength(d, wish.display, wish.display === 'in' ? 3 : 1),
            })),
            { value: 'own', name: 'own size', disabled: true },
          ]}
          onCommit={always((d) => set({ outsideDiameter: Number(d) }))}
        />
        <FormNumber
          path={`${which}/tube/outsideDiameter`}
          value={tube.outsideDiameter}
          usual={usual[which].tube.outsideDiameter}
          onPut={(outsideDiameter) => set({ outsideDiameter })}
          onClear={() => set({ outsideDiameter: null })}
        />
        <FormNumber
          path={`${which}/tube/wall`}
          meaning={`Thickness of the tube’s wall; usual: ${METRIC_WALLS.join(', ')} mm`}
          value={wall}
          range={{ most: Math.min(6, now.tube.outsideDiameter / 2 - 1) }}
          onPut={(next) => set({ wall: next })}
        />
        <FormNumber
          path={`${which}/length`}
          meaning={
            which === 'primary'
              ? 'From the valve seat, along the middle; empty: any, but equal'
              : 'From merge to merge; empty: any, but equal'
          }
          value={tube.length}
          usual="any, but equal"
          onPut={(length) => set({ length })}
          onClear={() => set({ length: null })}
        />
        <FormNumber
          path={`${which}/tooling/centerlineRadius`}
          value={tube.centerlineRadius}
          usual={usual[which].tooling.centerlineRadius}
          range={{ least: now.tube.outsideDiameter / 2 }}
          onPut={(centerlineRadius) => set({ centerlineRadius })}
          onClear={() => set({ centerlineRadius: null })}
        />
        {which === 'primary' && (
          <ChoiceField
            label="Material"
            value={wish.material}
            choices={MATERIALS.map(({ id, name }) => ({ value: id, name }))}
            onCommit={always((material) => put({ material }))}
          />
        )}
      </div>
      <div className="sizes">
        <SizeStrip
          size={size(`${which}Length`)}
          now={tube.length}
          taken={stepped}
          onUse={(length) => set({ length })}
        />
        <SizeStrip
          size={size(`${which}Bore`)}
          now={now.tube.outsideDiameter}
          taken={(bore) => nearestStock(bore, wall, wish.display)}
          takenAs="outside"
          onUse={(outsideDiameter) => set({ outsideDiameter })}
        />
      </div>
    </section>
  );
}
