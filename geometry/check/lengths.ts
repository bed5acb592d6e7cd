/** The groups' lengths: the rule the tool is named for. mm. */
import type { Header } from '../header/resolve';
import { LENGTH_TOLERANCE } from '../tolerance';
import type { GroupReport, Problem } from './report';
import { sayIn } from './words';

/** Length for balance: what lies in the head plus the centerline. */
export const balanceLength = (r: { lengthInHead: number; centerline: { length: number } | null }): number =>
  r.lengthInHead + (r.centerline?.length ?? 0);

export function checkLengths(header: Header): { groups: GroupReport[]; problems: Problem[] } {
  const say = sayIn(header.design.display);
  const groups: GroupReport[] = [];
  const problems: Problem[] = [];
  for (const [id, group] of header.groups) {
    const members = header.runners.filter((r) => r.runner.group === id && r.centerline);
    if (members.length === 0) continue;
    const lengths = members.map(balanceLength);
    const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
    const [min, max] = [Math.min(...lengths), Math.max(...lengths)];
    groups.push({ id, mean, min, max, spread: max - min });
    const { length, tolerance } = group;
    if (length === null) {
      if (max - min <= 2 * tolerance + LENGTH_TOLERANCE) continue;
      const message = `Group ${id} spreads over ${say(max - min)}; ${say(2 * tolerance)} is allowed: balance evens them.`;
      problems.push({ rule: 'balance', where: `groups/${id}`, found: max - min, allowed: 2 * tolerance, message });
      continue;
    }
    for (const [i, r] of members.entries()) {
      const off = lengths[i]! - length;
      if (Math.abs(off) <= tolerance + LENGTH_TOLERANCE) continue;
      const message = `Runner ${r.runner.id} is ${say(Math.abs(off))} ${off > 0 ? 'longer' : 'shorter'} than the ${say(length)} of group ${id}; ${say(tolerance)} is accepted: ${off > 0 ? 'shorten' : 'lengthen'} it, or balance them all.`;
      const at = r.centerline!.points[Math.floor(r.centerline!.points.length / 2)]!;
      problems.push({
        rule: 'balance',
        where: `groups/${id}/${r.runner.id}`,
        found: lengths[i]!,
        allowed: [length - tolerance, length + tolerance],
        message,
        at,
      });
    }
  }
  return { groups, problems };
}
