/** A flange's bolts and studs: thread, hole and place, typed in the table; one picked shows all of its fields. */
import { addFastener, fastenersOf, setFields } from '../../../../shared/design/edit';
import { LENGTH } from '../../../../shared/design/ranges';
import type { Design, Fastener } from '../../../../shared/design/types';
import { useDisplay } from '../../actions/display';
import { useSession } from '../../session';
import { ActionButton } from '../ActionButton';
import { applyEdit } from '../applyEdit';
import { sayQuantity } from '../fields/quantity';
import { addAndPick, holeActions } from '../inspectActions';
import { LengthField } from '../LengthField';
import { PlaceCells, PlaceHeads } from './PlaceCells';

export function FastenerTable({ design, flange }: { readonly design: Design; readonly flange: string }) {
  const fasteners = fastenersOf(design, flange);
  return (
    <div className="inspector-section">
      <h3>Fasteners</h3>
      {fasteners.length > 0 && (
        <table className="cells" aria-label={`Fasteners of ${flange}`}>
          <thead>
            <tr>
              <th scope="col">Thread</th>
              <PlaceHeads />
              <th scope="col" className="right">
                Hole
              </th>
            </tr>
          </thead>
          <tbody>
            {fasteners.map((fastener, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a fastener is its place in the list
              <Row key={index} design={design} flange={flange} index={index} fastener={fastener} />
            ))}
          </tbody>
        </table>
      )}
      <button type="button" className="button small" onClick={() => addAndPick((now) => addFastener(now, flange), '')}>
        Add a fastener
      </button>
      {holeActions.some((action) => action.ready?.()) && (
        <p className="hole-series">
          <span className="quiet">Every hole to ISO 273</span>
          {holeActions.map((action) => (
            <ActionButton key={action.id} action={action} design={design} />
          ))}
        </p>
      )}
    </div>
  );
}

type RowProps = {
  readonly design: Design;
  readonly flange: string;
  readonly index: number;
  readonly fastener: Fastener;
};

function Row({ design, flange, index, fastener }: RowProps) {
  const display = useDisplay();
  const at = design.flanges!.findIndex((f) => f.id === flange);
  const name = `fastener ${index + 1} of ${flange}`;
  const set = (key: string, where: readonly (string | number)[], value: number) =>
    applyEdit(
      (now) => setFields(now, [[['flanges', at, 'fasteners', index, ...where], value]]),
      `${key} of ${name}: ${sayQuantity(value, 'length', display)}`,
      ['flanges', flange, 'fasteners', index, ...where].join('/'),
    );
  return (
    <tr>
      <th scope="row">
        <button
          type="button"
          className="link"
          onClick={() => useSession.getState().select({ kind: 'fastener', id: flange, index })}
        >
          {fastener.thread} {fastener.kind}
        </button>
      </th>
      <PlaceCells
        place={fastener.position}
        of={name}
        onCommit={(axis, value, axisName) => set(axisName, ['position', axis], value)}
      />
      <td>
        <LengthField
          bare
          decimals={2}
          label={`Hole of ${name}`}
          value={fastener.hole}
          range={LENGTH}
          onCommit={(v) => set('Hole', ['hole'], v)}
        />
      </td>
    </tr>
  );
}
