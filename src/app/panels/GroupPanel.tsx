/** Each group of runners that must be equal: target, mean and spread. */
import type { GroupReport } from '../../../geometry';
import type { Group } from '../../../shared/design/types';
import { useDisplay } from '../actions/display';
import { useHeader, useReport } from '../derived';
import { Length } from '../parts/Length';
import { litClass, pointing, useLit } from '../parts/usePointing';

export function GroupPanel() {
  const report = useReport((s) => s.report);
  const header = useHeader();
  const display = useDisplay();
  if (!report || !header || report.groups.length === 0) return null;
  return (
    <section className="panel" aria-label="Groups">
      <table>
        <caption>Groups</caption>
        <thead>
          <tr>
            <th scope="col">Group</th>
            <th scope="col" className="right">
              Target <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Mean <span className="unit">{display}</span>
            </th>
            <th scope="col" className="right">
              Spread <span className="unit">{display}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {report.groups.map((g) => (
            <Row key={g.id} measured={g} group={header.groups.get(g.id)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ measured, group }: { readonly measured: GroupReport; readonly group: Group | undefined }) {
  const ref = { kind: 'group', id: measured.id } as const;
  const lit = useLit(ref);
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
      <th scope="row">{measured.id}</th>
      <td className="right">
        {group?.length == null ? <span className="quiet">equal</span> : <Length mm={group.length} bare />}
        {group && (
          <span className="unit">
            {' '}
            ± <Length mm={group.tolerance} bare />
          </span>
        )}
      </td>
      <td className="right">
        <Length mm={measured.mean} decimals={3} bare />
      </td>
      <td className="right">
        <Length mm={measured.spread} decimals={4} bare />
      </td>
    </tr>
  );
}
