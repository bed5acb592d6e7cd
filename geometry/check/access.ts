/** The rule `reach`, where the design asks for it: every fastener and service point reachable with some tool once all is wrapped. */
import type { Design } from '../../shared/design/types';
import type { AccessEntry } from '../reach/report';
import type { CheckReport, Problem } from './report';

/** The report with what no tool reaches; the very same where nothing has to be reached. @param entries of `accessReport` */
export function withAccess(report: CheckReport, design: Design, entries: readonly AccessEntry[]): CheckReport {
  if (!design.access?.required) return report;
  const problems = entries
    .filter(({ reach }) => reach === 'blocked' || reach === 'before-wrapping')
    .map(
      ({ reach, where, message, at }): Problem => ({
        rule: 'reach',
        where,
        found: reach,
        allowed: 'reachable',
        message,
        at,
      }),
    );
  return problems.length === 0 ? report : { ...report, ok: false, problems: [...report.problems, ...problems] };
}
