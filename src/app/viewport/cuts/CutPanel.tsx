/** The cuts as a small card over the picture: one row an axis, with a slide, a typed place and the side that stays. */
import './cuts.css';
import { useDisplay } from '../../actions/display';
import { Icon } from '../../panels/Icon';
import { AXES, useViewState } from '../../viewState';
import { PlaceField } from './PlaceField';
import { cutAt, type Extent } from './planes';

const STEP_MM = 1;

export function CutPanel({ extent }: { readonly extent: Extent }) {
  const { cuts, setCut } = useViewState();
  const display = useDisplay();
  if (!AXES.some((axis) => cuts[axis].on)) return null;
  const close = () => {
    for (const axis of AXES) setCut(axis, { on: false });
  };
  return (
    <section className="cut-panel" aria-label="View cuts">
      <div className="cut-head">
        <h2>View cuts</h2>
        <button
          type="button"
          className="button bare icon"
          aria-label="Undo all cuts"
          title="Undo all cuts"
          onClick={close}
        >
          <Icon name="close" />
        </button>
      </div>
      {AXES.map((axis, i) => {
        const cut = cuts[axis];
        const name = axis.toUpperCase();
        const at = cutAt(cut, axis, extent);
        return (
          <div key={axis} className="cut-row" data-off={!cut.on || undefined}>
            <label>
              <input type="checkbox" checked={cut.on} onChange={(e) => setCut(axis, { on: e.target.checked })} />
              {name}
            </label>
            <input
              type="range"
              aria-label={`Cut square to ${name}, place`}
              min={Math.floor(extent.low[i]!)}
              max={Math.ceil(extent.high[i]!)}
              step={STEP_MM}
              value={at}
              onChange={(e) => setCut(axis, { on: true, at: Number(e.target.value) })}
            />
            <PlaceField name={name} at={at} display={display} onPlace={(mm) => setCut(axis, { on: true, at: mm })} />
            <button
              type="button"
              className="button"
              aria-pressed={cut.flip}
              disabled={!cut.on}
              title={`Show the other side of the cut square to ${name}`}
              onClick={() => setCut(axis, { flip: !cut.flip })}
            >
              Flip
            </button>
          </div>
        );
      })}
    </section>
  );
}
