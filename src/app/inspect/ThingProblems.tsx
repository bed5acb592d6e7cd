/** What the last check has against the things being edited, beside the numbers that would mend it. */

import { placeOfThing, type Thing } from '../../../shared/design/edit';
import { useOutOfReach } from '../actions/edit';
import { useReport } from '../derived';
import { useDocument } from '../document';
import { Length } from '../parts/Length';

const MOST = 3;
/** Lengths that differ by less read alike, mm. */
const EQUAL = 0.01;

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
  const [thing] = things;
  const group =
    thing?.kind === 'group' && things.length === 1 ? report?.groups.find(({ id }) => id === thing.id) : undefined;
  const asked = group && settled?.groups[group.id]?.length;
  // Equal among themselves and all off alike: one sentence says it better than one a runner.
  if (group && typeof asked === 'number' && mine.length > 1 && group.spread < EQUAL) {
    return <Reach reached={group.mean} asked={asked} rules={rules} />;
  }
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

type ReachProps = { readonly reached: number; readonly asked: number; readonly rules: readonly string[] };

/** A group length that the header cannot have: what it can, and what stops it. */
function Reach({ reached, asked, rules }: ReachProps) {
  const side = reached > asked ? 'longer' : 'shorter';
  return (
    <p className="thing-problems">
      {rules.length > 0 ? 'Out of reach: the nearest that can be had is ' : 'Its runners all measure '}
      <Length mm={reached} />, <Length mm={Math.abs(reached - asked)} /> {side} than asked for
      {rules.length > 0
        ? `. Stopped by ${rules.slice(0, 2).join(', and ')}.`
        : ': balance them, or ask for another length.'}
    </p>
  );
}
