/** The bend table of one runner, as the bender reads it: straight, rotation, angle, radius; nominal, before springback. */
import { type BendTable, straightIndices } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { useBendTables, useHeader } from '../derived';
import { Angle } from '../parts/Angle';
import { Length } from '../parts/Length';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLitItself } from '../parts/usePointing';
import { runnerIn } from '../refs';
import { useSession } from '../session';

export function BendPanel() {
  const header = useHeader();
  const tables = useBendTables();
  const display = useDisplay();
  const paints = usePaints();
  const selected = useSession((s) => runnerIn(s.selected));
  if (!header || !tables) return null;
  const runner = header.runners.find((r) => r.runner.id === selected) ?? header.runners[0];
  if (!runner) return null;
  const { id, from } = runner.runner;
  const table = tables.get(id);
  const line = runner.centerline;
  return (
    <section className="panel" aria-label="Bend table">
      <div className="panel-head">
        <h2>Bend table</h2>
        <select
          aria-label="Runner"
          value={id}
          onChange={(event) => useSession.getState().select({ kind: 'runner', id: event.target.value })}
        >
          {header.runners.map((r) => (
            <option key={r.runner.id}>{r.runner.id}</option>
          ))}
        </select>
        {paints.get(id) && <Swatch paint={paints.get(id)!} />}
      </div>
      {!table || !line ? (
        <p className="quiet">{id} is not laid yet: it has no points.</p>
      ) : (
        <>
          <table aria-label={`Bend table of ${id}`}>
            <thead>
              <tr>
                <th scope="col">Bend</th>
                <th scope="col" className="right">
                  Straight <span className="unit">{display}</span>
                </th>
                <th scope="col" className="right">
                  Rotation
                </th>
                <th scope="col" className="right">
                  Angle
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
          <p className="note">
            Tube <Length mm={line.length} />
            {runner.lengthInHead > 0 && (
              <>
                , plus <Length mm={runner.lengthInHead} /> in the head
              </>
            )}
            . First bend clocked <Angle degrees={table.clocking} decimals={2} /> from the{' '}
            {'port' in from ? "port's" : "collector's"} up; angles turn right-handed along the travel. Before
            springback.
          </p>
        </>
      )}
    </section>
  );
}

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
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
      <th scope="row">{last ? 'end' : index + 1}</th>
      <td className={`right cell${last ? '' : litClass(straightLit)}`} {...(last ? {} : pointing(straight))}>
        <Length mm={row.length} bare />
      </td>
      <td className="right">{last ? '' : <Angle degrees={row.rotation} decimals={2} />}</td>
      <td className="right">{last ? '' : <Angle degrees={row.angle} decimals={2} />}</td>
      <td className="right">{last ? '' : <Length mm={row.radius} bare />}</td>
    </tr>
  );
}
