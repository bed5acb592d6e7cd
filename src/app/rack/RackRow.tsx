/** One runner on the rack: name, strip, the glass over its end, and how far off it is. */
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
  readonly end: End;
  readonly group: EndGroup;
  readonly window: number;
  readonly scale: Scale;
  readonly paint: Paint;
};

export function RackRow({ strip, end, group, window, scale, paint }: Props) {
  const ref: Ref = { kind: 'runner', id: strip.id };
  const lit = useLit(ref);
  return (
    <li className={`rack-row${litClass(lit)}`}>
      <button type="button" className="rack-name" aria-pressed={lit.selected} {...pointing(ref)}>
        <Swatch paint={paint} />
        <span>{strip.id}</span>
      </button>
      <div className="rack-strip">
        <StripView strip={strip} target={group.target} scale={scale} paint={paint} />
      </div>
      <div className="rack-glass">
        {end.deviation !== null && (
          <EndGlass end={end} deviation={end.deviation} tolerance={group.tolerance} window={window} paint={paint} />
        )}
      </div>
      <div className={`rack-deviation${end.outside ? ' fails' : ''}`}>
        <Deviation strip={strip} end={end} />
      </div>
    </li>
  );
}

function Deviation({ strip, end }: { readonly strip: Strip; readonly end: End }) {
  if (strip.length === null) return <span className="quiet">not laid</span>;
  if (end.deviation === null) return <Length mm={strip.length} />;
  if (Math.abs(end.deviation) < EVEN) return <span className="even">even</span>;
  return <Length mm={end.deviation} signed decimals={Math.abs(end.deviation) < 0.1 ? 3 : 2} />;
}
