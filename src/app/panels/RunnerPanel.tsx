/** Every runner's length, how far off it is, and how much bending it takes. */
import { bends, DEGREES } from '../../../geometry';
import { useDisplay } from '../actions/display';
import { useBendTables, useHeader } from '../derived';
import { Angle } from '../parts/Angle';
import { Length } from '../parts/Length';
import { Swatch } from '../parts/Swatch';
import { usePaints } from '../parts/usePaints';
import { litClass, pointing, useLit } from '../parts/usePointing';
import { type End, endGroups } from '../rack/ends';
import { type Strip, stripOf } from '../rack/strip';
import { RunnerToggles } from './RunnerToggles';

export function RunnerPanel() {
  const header = useHeader();
  const tables = useBendTables();
  const display = useDisplay();
  if (!header || !tables) return null;
  const strips = header.runners.map((r) => stripOf(r, tables.get(r.runner.id)));
  const groups = endGroups(strips, header.groups);
  const ends = new Map(groups.flatMap((g) => g.ends.map((e) => [e.id, e] as const)));
  return (
    <section className="panel" aria-label="Runners">
      <table>
        <caption>Runners</caption>
        <thead>
          <tr>
            <th scope="col">Runner</th>
            <th scope="col" className="right">
              Length <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Off <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Bends
            </th>
            <th scope="col" className="right">
              Turned
            </th>
            <th scope="col">
              <span className="unseen">Locked and hidden</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {strips.map((strip, i) => {
            const line = header.runners[i]!.centerline;
            const list = line ? bends(line) : [];
            return (
              <Row
                key={strip.id}
                strip={strip}
                end={ends.get(strip.id)!}
                bendCount={list.length}
                turned={list.reduce((sum, b) => sum + b.angle, 0) * DEGREES}
              />
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

type RowProps = { readonly strip: Strip; readonly end: End; readonly bendCount: number; readonly turned: number };

function Row({ strip, end, bendCount, turned }: RowProps) {
  const ref = { kind: 'runner', id: strip.id } as const;
  const lit = useLit(ref);
  const paint = usePaints().get(strip.id);
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
      <th scope="row">
        {paint && <Swatch paint={paint} />} {strip.id}
      </th>
      {strip.length === null ? (
        <td colSpan={4} className="quiet">
          not laid yet
        </td>
      ) : (
        <>
          <td className="right">
            <Length mm={strip.length} decimals={3} bare />
          </td>
          <td className={`right${end.outside ? ' fails' : ''}`}>
            {end.deviation === null ? '' : <Length mm={end.deviation} decimals={3} signed bare />}
          </td>
          <td className="right">{bendCount}</td>
          <td className="right">
            <Angle degrees={turned} />
          </td>
        </>
      )}
      <td className="toggles">
        <RunnerToggles id={strip.id} />
      </td>
    </tr>
  );
}
