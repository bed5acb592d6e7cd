/**
 * One runner on the rack: name, strip, the glass over its end, and how far off it is. Drawn anew only where one of these
 * changes, and not when a neighbour moves.
 */
import { memo } from 'react';
import type { Paint } from '../colours';
import { Length } from '../parts/Length';
import { Swatch } from '../parts/Swatch';
import { litClass, pointing, useLit } from '../parts/usePointing';
import type { Ref } from '../session';
import { EndGlass } from './EndGlass';
import { type End, type EndGroup, EVEN } from './ends';
import { StripView } from './StripView';
import type { Scale } from './scale';
import type { Strip } from './strip';

type Props = {
  readonly strip: Strip;
  readonly deviation: End['deviation'];
  readonly outside: boolean;
  readonly target: EndGroup['target'];
  readonly tolerance: number;
  readonly window: number;
  readonly scale: Scale;
  readonly paint: Paint;
};

export const RackRow = memo(function RackRow(props: Props) {
  const { strip, deviation, outside, target, tolerance, window, scale, paint } = props;
  const ref: Ref = { kind: 'runner', id: strip.id };
  const lit = useLit(ref);
  return (
    <li className={`rack-row${litClass(lit)}`}>
      <button type="button" className="rack-name" aria-pressed={lit.selected} {...pointing(ref)}>
        <Swatch paint={paint} />
        <span>{strip.id}</span>
      </button>
      <div className="rack-strip">
        <StripView strip={strip} target={target} scale={scale} paint={paint} />
      </div>
      <div className="rack-glass">
        {deviation !== null && (
          <EndGlass outside={outside} deviation={deviation} tolerance={tolerance} window={window} paint={paint} />
        )}
      </div>
      <div className={`rack-deviation${outside ? ' fails' : ''}`}>
        <Deviation length={strip.length} deviation={deviation} />
      </div>
    </li>
  );
});

function Deviation({ length, deviation }: { readonly length: number | null; readonly deviation: number | null }) {
  if (length === null) return <span className="quiet">not laid</span>;
  if (deviation === null) return <Length mm={length} />;
  if (Math.abs(deviation) < EVEN) return <span className="even">even</span>;
  return <Length mm={deviation} signed decimals={Math.abs(deviation) < 0.1 ? 3 : 2} />;
}
