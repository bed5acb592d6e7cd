/** The head's ports: where they stand, what shape their openings have, where they look. */
import type { Opening } from '../../../shared/design/types';
import { ChoiceField } from '../inspect/ChoiceField';
import { always } from '../inspect/fields/always';
import { LengthField } from '../inspect/LengthField';
import { FormNumber } from './fields';
import type { Filled } from './formOf';
import { put } from './state';
import type { Wish } from './wish';

type Props = { readonly wish: Wish; readonly filled: Filled };

export function PortSection({ wish, filled: { form, usual } }: Props) {
  const { opening } = form.port;
  const shape = (opening: Opening) => put({ opening });
  return (
    <section className="new-section" aria-labelledby="new-ports">
      <h3 id="new-ports">Head and ports</h3>
      <div className="new-fields">
        {wish.cylinders > wish.banks && (
          <FormNumber
            path="banks/0/pitch"
            meaning="From the middle of one port to the next; usually the bore pitch"
            range={{ least: 20 }}
            value={wish.pitch}
            usual={usual.pitch}
            onPut={(pitch) => put({ pitch })}
            onClear={() => put({ pitch: null })}
          />
        )}
        <FormNumber
          path="port/lengthInHead"
          value={wish.lengthInHead}
          onPut={(lengthInHead) => put({ lengthInHead })}
        />
        <ChoiceField
          label="Opening"
          value={opening.shape}
          choices={[
            { value: 'round', name: 'Round' },
            { value: 'rounded-rectangle', name: 'Rounded rectangle' },
            { value: 'oval', name: 'Oval' },
          ]}
          onCommit={always((chosen) => shape(reshaped(opening, chosen as Opening['shape'])))}
        />
        {opening.shape === 'round' ? (
          <FormNumber
            path="port/opening/diameter"
            label="Across"
            value={wish.opening === null ? null : opening.diameter}
            usual={opening.diameter}
            onPut={(diameter) => shape({ shape: 'round', diameter })}
            onClear={() => put({ opening: null })}
          />
        ) : (
          <>
            <FormNumber
              path="port/opening/width"
              label="Width"
              value={opening.width}
              onPut={(width) => shape({ ...opening, width })}
            />
            <FormNumber
              path="port/opening/height"
              label="Height"
              value={opening.height}
              onPut={(height) => shape({ ...opening, height })}
            />
          </>
        )}
        {opening.shape === 'rounded-rectangle' && (
          <FormNumber
            path="port/opening/corner"
            value={opening.corner}
            range={{ most: Math.min(opening.width, opening.height) / 2 }}
            onPut={(corner) => shape({ ...opening, corner })}
          />
        )}
        <FormNumber
          path="port/angle"
          label="Points down"
          meaning={
            wish.banks === 1 ? 'Below level; below 0: above it' : 'Further than square to the bank; below 0: less far'
          }
          value={wish.angle}
          onPut={(angle) => put({ angle })}
        />
        {wish.banks === 1 && (
          <ChoiceField
            label="Ports look to"
            meaning="+Y and −Y are the two sides of the engine"
            value={String(wish.side)}
            choices={[
              { value: '1', name: '+Y' },
              { value: '-1', name: '−Y' },
            ]}
            onCommit={always((side) => put({ side: side === '1' ? 1 : -1, collectors: [] }))}
          />
        )}
        <ChoiceField
          label="Cylinder 1 at"
          meaning="+X runs along the crankshaft"
          value={wish.firstAt}
          choices={[
            { value: 'low', name: 'the −X end' },
            { value: 'high', name: 'the +X end' },
          ]}
          onCommit={always((end) => put({ firstAt: end === 'high' ? 'high' : 'low' }))}
        />
        <LengthField
          label="Port height"
          meaning="Port centres above the crankshaft’s axis; 0: heights are measured from the ports"
          range={{ least: -500, most: 1000 }}
          value={wish.height}
          onCommit={always((height) => put({ height }))}
        />
        <LengthField
          label="Flange face out"
          meaning="From the crankshaft’s axis sideways to the flange’s outer face"
          range={{ least: 0, most: 1000 }}
          value={wish.reach}
          fallback={usual.reach}
          onCommit={always((reach) => put({ reach }))}
          onClear={always(() => put({ reach: null }))}
        />
      </div>
    </section>
  );
}

/** About as large in the new shape. */
function reshaped(from: Opening, shape: Opening['shape']): Opening {
  const [width, height] = from.shape === 'round' ? [from.diameter, from.diameter] : [from.width, from.height];
  if (shape === 'round') return { shape, diameter: Math.max(width, height) };
  const low = from.shape === 'round' ? Math.round(height * 0.85) : height;
  return shape === 'oval'
    ? { shape, width, height: low }
    : { shape, width, height: low, corner: Math.round(Math.min(width, low) / 4) };
}
