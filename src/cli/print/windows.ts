/** Length windows beside a report: as fields for programs, as words for people. mm in fields, the display unit in words. */
import { type CheckReport, outOfReach, type Window, type Windows } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

/** The report with each runner's and group's window; those of runners without points are in `windows` alone. */
export function withWindows(report: CheckReport, windows: Windows) {
  const runners = new Map(windows.runners.map(({ id, ...window }) => [id, window]));
  const groups = new Map(windows.groups.map(({ id, ...window }) => [id, window]));
  return {
    ...report,
    runners: report.runners.map((r) => ({ ...r, window: runners.get(r.id) })),
    groups: report.groups.map((g) => ({ ...g, window: groups.get(g.id) })),
    windows,
  };
}

/** "612.400 to 890.000", "612.400 or longer". */
export function windowWords({ shortest, longest }: Window, length: (mm: number) => string): string {
  if (shortest === null) return 'no way found';
  return longest === null ? `${length(shortest)} or longer` : `${length(shortest)} to ${length(longest)}`;
}

/** What cannot be had, unless a finding says it already. */
export function reachNotes(design: Design, { problems }: CheckReport, windows: Windows): string {
  const said = outOfReach(windows, design).filter((words) => !problems.some((p) => p.message.includes(words)));
  return said.length === 0 ? '' : ['Out of reach', ...new Set(said.map((words) => `  ${words}`))].join('\n');
}
