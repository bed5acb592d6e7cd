/** Each group of runners that must be equal: target, mean and spread, and the lengths in reach. */
import { memo } from 'react';
import type { GroupReport } from '../../../geometry';
import { setFields } from '../../../shared/design/edit';
import { DISTANCE, LENGTH } from '../../../shared/design/ranges';
import type { Group } from '../../../shared/design/types';
import { useDisplay } from '../actions/display';
import { applyEdit } from '../inspect/applyEdit';
import { sayQuantity } from '../inspect/fields/quantity';
import { LengthField } from '../inspect/LengthField';
import { Length } from '../parts/Length';
import { litClass, pointing, useLit } from '../parts/usePointing';
import { useShownHeader, useShownReport } from '../route/shown';
import { GroupReach } from '../windows/GroupReach';

export function GroupPanel() {
  const report = useShownReport();
  const header = useShownHeader();
  const display = useDisplay();
  if (!report || !header) return null;
  const named = [...header.groups].filter(([id]) => header.runners.some((r) => r.runner.group === id));
  if (named.length === 0) return null;
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
          {named.map(([id, group]) => (
            <Row key={id} id={id} measured={report.groups.find((g) => g.id === id)} group={group} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

type RowProps = { readonly id: string; readonly measured: GroupReport | undefined; readonly group: Group };

function Row({ id, measured, group }: RowProps) {
  const ref = { kind: 'group', id } as const;
  const lit = useLit(ref);
  return (
    <>
      <tr className={`pick${litClass(lit)}`} tabIndex={0} aria-selected={lit.selected} {...pointing(ref)}>
        <th scope="row">{id}</th>
        <td>
          <Target id={id} group={group} />
        </td>
        {measured ? (
          <>
            <td className="right">
              <Length mm={measured.mean} decimals={3} bare />
            </td>
            <td className="right">
              <Length mm={measured.spread} decimals={4} bare />
            </td>
          </>
        ) : (
          <td colSpan={2} className="right quiet">
            not laid yet
          </td>
        )}
      </tr>
      <tr className="reach-row">
        <td colSpan={4}>
          <GroupReach id={id} length={group.length ?? measured?.mean ?? null} />
        </td>
      </tr>
    </>
  );
}

/** What is asked of a group: it stays while what is measured changes. */
const Target = memo(function Target({ id, group }: { readonly id: string; readonly group: Group }) {
  const display = useDisplay();
  const set = (name: string, key: 'length' | 'tolerance', before: number | null, value: number | null) => {
    const say = (mm: number | null) => (mm === null ? 'any, but equal' : sayQuantity(mm, 'length', display));
    return applyEdit(
      (design) => setFields(design, [[['groups', id, key], value]]),
      `${name} of group ${id}: ${say(before)} → ${say(value)}`,
      `groups/${id}/${key}`,
    );
  };
  return (
    <span className="target">
      <LengthField
        bare
        decimals={2}
        label={`Length of group ${id}`}
        meaning="each runner's length, that in the head included; empty: any, but equal"
        value={group.length}
        fallback="equal"
        range={LENGTH}
        onCommit={(value) => set('Length', 'length', group.length, value)}
        onClear={() => set('Length', 'length', group.length, null)}
      />
      <span className="unit plus-minus">±</span>
      <LengthField
        bare
        decimals={2}
        label={`Tolerance of group ${id}`}
        meaning="how far off the shop accepts, either way"
        value={group.tolerance}
        range={DISTANCE}
        step={0.5}
        onCommit={(value) => set('Tolerance', 'tolerance', group.tolerance, value)}
      />
    </span>
  );
});
