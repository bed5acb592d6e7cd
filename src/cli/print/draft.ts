/** A first header for people: its report, what its maker should know, and where it went. */
import type { Draft } from '../../../geometry';
import { printReport } from './report';

/** @param output where it went, as the user named it */
export function printDraft({ design, report, notes }: Draft, output: string): string {
  const parts = [
    printReport(design, report).trimEnd(),
    ['To know', ...notes.map((note) => `  ${note}`)].join('\n'),
    `${report.ok ? 'A first header' : 'Best attempt, not every rule holds'}: written to ${output}`,
  ];
  return `${parts.join('\n\n')}\n`;
}
