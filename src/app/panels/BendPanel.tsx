/** The bend table of one runner, as the bender reads it: straight, rotation, angle, radius; nominal, before springback. */
import { memo } from 'react';
import { type BendNumber, type BendTable, straightIndices } from '../../../geometry';
import { DISTANCE, LENGTH, narrowed, type Range } from '../../../shared/design/ranges';
import { useDisplay } from '../actions/display';
import { bendTablesOf } from '../derived';
import { useDocument } from '../document';
import { sayQuantity } from '../inspect/fields/quantity';
import { NumberField } from '../inspect/NumberField';
import { setBendRadius, setRow } from '../inspect/shapeEdits';
import { Angle } from '../parts/Angle';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLitItself } from '../parts/usePointing';
import { runnerIn } from '../refs';
import { useIsPreview, useShownHeader } from '../route/shown';
import { useSession } from '../session';
import { TubeNote } from './TubeNote';

/** What a cell takes; what the runner can take, its answer says. */
const RANGES: Readonly<Record<BendNumber['what'], Range>> = {
  straight: DISTANCE,
  angle: { least: 0, most: 360, above: true },
  rotation: { least: -180, most: 180 },
  clocking: { least: -180, most: 180 },
};

export function BendPanel() {
  const header = useShownHeader();
  const isPreview = useIsPreview();
  const display = useDisplay();
  const paints = usePaints();
  const selected = useSession((s) => runnerIn(s.selected));
  if (!header) return null;
  const runner = header.runners.find((r) => r.runner.id === selected) ?? header.runners[0];
  if (!runner) return null;
  const { id, from } = runner.runner;
  const table = bendTablesOf(header).get(id);
  const line = runner.centerline;
  return (
    <section className="panel" aria-label="Bend table">
      <div className="panel-head">
        <h2>Bend table</h2>
        <RunnerChoice ids={header.runners.map((r) => r.runner.id).join('\n')} shown={id} />
        {paints.get(id) && <Swatch paint={paints.get(id)!} />}
      </div>
      {!table || !line ? (
        <p className="quiet">{id} is not laid yet: it has no points.</p>
      ) : (
        <fieldset className="plain" disabled={isPreview}>
          <table aria-label={`Bend table of ${id}`}>
            <thead>
              <tr>
                <th scope="col">Bend</th>
                <th scope="col" className="right">
                  Straight <span className="unit">{display}</span>
                </th>
                <th scope="col" className="right">
                  Rotation <span className="unit">°</span>
                </th>
                <th scope="col" className="right">
                  Angle <span className="unit">°</span>
                </th>
                <th scope="col" className="right">
                  Radius <span className="unit">{display}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, i) => (
                <Row
                  // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the sequence
                  key={i}
                  runner={id}
                  table={table}
                  index={i}
                  last={i === straightIndices(line).length - 1}
                  row={row}
                />
              ))}
            </tbody>
          </table>
          {table.rows.length > 1 && (
            <div className="clocking">
              <span>First bend clocked from the {'port' in from ? "port's" : "collector's"} up</span>
              <Cell
                name="Clocking of the first bend"
                runner={id}
                quantity="angle"
                value={table.clocking}
                what="clocking"
              />
              <span className="unit">°</span>
            </div>
          )}
          <TubeNote header={header} runner={runner} />
        </fieldset>
      )}
    </section>
  );
}

/** @param props.ids one a line, so that the same list is the same */
const RunnerChoice = memo(function RunnerChoice({ ids, shown }: { readonly ids: string; readonly shown: string }) {
  return (
    <select
      aria-label="Runner"
      value={shown}
      onChange={(event) => useSession.getState().select({ kind: 'runner', id: event.target.value })}
    >
      {ids.split('\n').map((id) => (
        <option key={id}>{id}</option>
      ))}
    </select>
  );
});

type RowProps = {
  readonly runner: string;
  readonly table: BendTable;
  readonly index: number;
  readonly last: boolean;
  readonly row: BendTable['rows'][number];
};

function Row({ runner, index, last, row }: RowProps) {
  const straight = { kind: 'runner', id: runner, straight: index } as const;
  const ref = last ? straight : ({ kind: 'runner', id: runner, bend: index } as const);
  const lit = useLitItself(ref);
  const straightLit = useLitItself(straight);
  const bend = `bend ${index + 1}`;
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
      <th scope="row">{last ? 'end' : index + 1}</th>
      <td className={`right cell${last ? '' : litClass(straightLit)}`} {...(last ? {} : pointing(straight))}>
        <Cell
          name={last ? 'Last straight' : `Straight before ${bend}`}
          runner={runner}
          quantity="length"
          value={row.length}
          what="straight"
          index={index}
        />
      </td>
      <td className="right">
        {!last && index === 0 && <Angle degrees={row.rotation} decimals={2} />}
        {!last && index > 0 && (
          <Cell
            name={`Rotation of ${bend}`}
            runner={runner}
            quantity="angle"
            value={row.rotation}
            what="rotation"
            index={index}
          />
        )}
      </td>
      <td className="right">
        {!last && (
          <Cell
            name={`Angle of ${bend}`}
            runner={runner}
            quantity="angle"
            value={row.angle}
            what="angle"
            index={index}
          />
        )}
      </td>
      <td className="right">{!last && <RadiusCell runner={runner} index={index} radius={row.radius} />}</td>
    </tr>
  );
}

type CellProps = {
  readonly name: string;
  readonly runner: string;
  readonly quantity: 'length' | 'angle';
  readonly value: number;
  readonly what: BendNumber['what'];
  /** Of the straight or the bend; none for the clocking. */
  readonly index?: number;
};

/**
 * A number of the table, to be typed over: the header follows, as when the bend is dragged. Drawn anew only where it is
 * another number.
 */
const Cell = memo(function Cell({ name, runner, quantity, value, what, index = 0 }: CellProps) {
  const display = useDisplay();
  const row: BendNumber = what === 'clocking' ? { what } : { what, index };
  return (
    <data value={value}>
      <NumberField
        bare
        label={name}
        meaning="the bends beside it and the other runners follow"
        quantity={quantity}
        range={RANGES[what]}
        decimals={2}
        value={value}
        onCommit={(next) =>
          setRow(
            runner,
            row,
            next,
            `${name} of runner ${runner}: ${sayQuantity(value, quantity, display)} → ${sayQuantity(next, quantity, display)}`,
          )
        }
      />
    </data>
  );
});

const RadiusCell = memo(function RadiusCell({
  runner,
  index,
  radius,
}: {
  readonly runner: string;
  readonly index: number;
  readonly radius: number;
}) {
  const display = useDisplay();
  const least = useDocument((s) => {
    const tube = s.design?.runners.find((r) => r.id === runner)?.tube;
    return (s.design?.tubes[tube ?? '']?.outsideDiameter ?? 0) / 2;
  });
  return (
    <data value={radius}>
      <NumberField
        bare
        label={`Radius of bend ${index + 1}`}
        meaning="to the centerline: the die, or the stock bend"
        quantity="length"
        range={narrowed(LENGTH, { least })}
        decimals={2}
        value={radius}
        onCommit={(next) =>
          setBendRadius(
            runner,
            index,
            next,
            `Radius of bend ${index + 1} of runner ${runner}: ${sayQuantity(radius, 'length', display)} → ${sayQuantity(next, 'length', display)}`,
          )
        }
      />
    </data>
  );
});
