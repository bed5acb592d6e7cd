/** What the last check has against the things being edited, beside the numbers that would mend it. */

import { placeOfThing, type Thing } from '../../../shared/design/edit';
import { useOutOfReach } from '../actions/edit';
import { useReport } from '../derived';
import { useDocument } from '../document';

const MOST = 3;

export function ThingProblems({ things }: { readonly things: readonly Thing[] }) {
  const report = useReport((s) => s.report);
  const settled = useDocument((s) => s.settled);
  const outOfReach = useOutOfReach((s) => s.last);
  const places = things.map(placeOfThing);
  const mine = (report?.problems ?? []).filter(({ where }) =>
    places.some((p) => where === p || where.startsWith(`${p}/`)),
  );
  const rules = outOfReach && outOfReach.design === settled && mine.length > 0 ? outOfReach.rules : [];
  if (mine.length === 0) return null;
  return (
    <ul className="thing-problems">
      {mine.slice(0, MOST).map((problem, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is replaced as a whole
        <li key={i}>{problem.message}</li>
      ))}
      {mine.length > MOST && <li>and {mine.length - MOST} more, under Numbers.</li>}
      {rules.length > 0 && <li>This is the nearest that can be had: {rules.slice(0, 2).join(', and ')}.</li>}
    </ul>
  );
}
