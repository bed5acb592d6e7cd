/** Says which asked lengths cannot be had, which runner sets the limit, and what can be had instead. */
import type { Design } from '../../shared/design/types';
import type { CheckReport } from '../check/report';
import { type Say, sayIn } from '../check/words';
import type { GroupWindow, Windows } from './report';

/** Lengths found keep clearances by a hair more than the rules ask: what is missed by less is in reach, mm. */
const HAIR = 0.05;

/** One sentence for each group whose length is out of reach, in the document's order; empty where all can be had. */
export const outOfReach = (windows: Windows, design: Design): string[] =>
  windows.groups.flatMap((group) => sentence(group, windows, design) ?? []);

/** The report with what can be had added to whatever it says of the balance of a group that is out of reach. */
export function withReach(report: CheckReport, windows: Windows, design: Design): CheckReport {
  const sentences = new Map(windows.groups.map((g) => [g.id, sentence(g, windows, design)]));
  const problems = report.problems.map((p) => {
    const [, group = ''] = p.rule === 'balance' ? p.where.split('/') : [];
    const more = sentences.get(group);
    return more ? { ...p, message: `${p.message} ${more}` } : p;
  });
  return { ...report, problems };
}

/** Whether a length lies outside what was found. */
export const isOutside = (length: number, { shortest, longest }: Pick<GroupWindow, 'shortest' | 'longest'>): boolean =>
  (shortest !== null && length < shortest - HAIR) || (longest !== null && length > longest + HAIR);

/** Whether members have no length in common. */
export const isEmpty = ({ shortest, longest }: Pick<GroupWindow, 'shortest' | 'longest'>): boolean =>
  shortest !== null && longest !== null && shortest > longest + HAIR;

function sentence(group: GroupWindow, windows: Windows, design: Design): string | null {
  const say = sayIn(design.display);
  const { id, shortest, longest, shortestBy, longestBy, without } = group;
  if (without.length > 0) {
    const names = without.length === 1 ? `runner ${without[0]}` : `runners ${without.join(', ')}`;
    return `No way was found for ${names}, even alone: make room there, or allow more or wider bends.`;
  }
  const asked = design.groups[id]?.length ?? null;
  const setBy = (runner: string | null, limit: number | null, end: 'shortest' | 'longest'): string => {
    const { locked = false } = windows.runners.find((r) => r.id === runner) ?? {};
    return `runner ${runner} is ${say(limit!)} ${locked ? 'and locked' : `at the ${end} found`}`;
  };
  if (isEmpty(group))
    return `Group ${id} has no length in common: ${setBy(shortestBy, shortest, 'shortest')}, ${setBy(longestBy, longest, 'longest')}.`;
  if (asked === null || !isOutside(asked, group)) return null;
  const why = asked < shortest! ? setBy(shortestBy, shortest, 'shortest') : setBy(longestBy, longest, 'longest');
  return `${say(asked)} is out of reach for group ${id}: ${why}; ${windowWords(group, say)} can be had.`;
}

const windowWords = ({ shortest, longest }: GroupWindow, say: Say): string =>
  longest === null
    ? `${say(shortest!)} or longer`
    : longest - shortest! < HAIR
      ? `only ${say(longest)}`
      : `${say(shortest!)} to ${say(longest)}`;
