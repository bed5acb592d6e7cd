/** What a group's runners measure, beside what was asked of them: each a click from being picked. */
import type { Design } from '../../../../shared/design/types';
import { useReport } from '../../derived';
import { Length } from '../../parts/Length';
import { Spread } from '../../parts/Spread';
import { litClass, pointing, useLit } from '../../parts/usePointing';
import { GroupReach } from '../../windows/GroupReach';

export function GroupMeasured({ design, group }: { readonly design: Design; readonly group: string }) {
  const measured = useReport((s) => s.report?.groups.find((g) => g.id === group));
  const lengths = useReport((s) => s.report?.runners);
  const members = design.runners.filter((runner) => runner.group === group);
  return (
    <div className="inspector-section">
      <h3>Measured</h3>
      {members.length === 0 && <p className="note">No runner is in this group: choose it under a runner's Group.</p>}
      {measured && (
        <p className="note">
          Mean <Length mm={measured.mean} decimals={3} />; they differ by <Spread mm={measured.spread} />.
        </p>
      )}
      <GroupReach id={group} length={design.groups[group]?.length ?? measured?.mean ?? null} />
      <table>
        <tbody>
          {members.map(({ id }) => (
            <Member key={id} id={id} length={lengths?.find((r) => r.id === id)?.length} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Member({ id, length }: { readonly id: string; readonly length: number | undefined }) {
  const ref = { kind: 'runner', id } as const;
  const lit = useLit(ref);
  return (
    <tr className={`pick${litClass(lit)}`} tabIndex={0} {...pointing(ref)}>
      <th scope="row">{id}</th>
      <td className="right">
        {length === undefined ? <span className="quiet">not laid</span> : <Length mm={length} decimals={3} />}
      </td>
    </tr>
  );
}
