/** What `balance` did, for people: the new header's report, how far it is from the old one, and what stops it. */
import { type BalanceResult, limitWords } from '../../../geometry';
import { columns } from './columns';
import { measuresIn } from './measures';
import { printReport } from './report';

/** @param output where it went, as the user named it */
export function printBalanced({ design, report, moved, limits }: BalanceResult, output: string): string {
  const { length, unit } = measuresIn(design.display);
  const rows = moved.map(({ id, distance }) => [id, length(distance)]);
  const parts = [printReport(design, report).trimEnd()];
  if (rows.length > 0)
    parts.push(`How far points moved at most\n${columns([['runner', `moved ${unit}`], ...rows], ['left', 'right'])}`);
  if (limits.length > 0)
    parts.push(['What stands at its limit', ...limitWords(limits).map((w) => `  ${w}`)].join('\n'));
  parts.push(`${report.ok ? 'Balanced' : 'Best attempt, not every rule holds'}: written to ${output}`);
  return `${parts.join('\n\n')}\n`;
}
