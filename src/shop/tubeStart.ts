/**
 * Where a tube does not start where the tables do: `bend-schedule.csv` counts row 1's `length` from the flange's face, and a
 * transition, a flange's step or a length that is sawn on for trimming puts the tube's own start elsewhere. In words, for
 * people. mm, or as the design is shown.
 */
import type { Display } from '../../shared/design/types';
import { formatLength } from '../../shared/units';
import { BEND_SCHEDULE } from './bendSchedule';
import { CUT_LIST } from './cutList';
import type { Part } from './part';

/** What holds for every runner; the sentences of `tubeStarts` say for which it matters. */
export const START_RULE = `Row 1's length in ${BEND_SCHEDULE} counts from the flange's face, or the end of the collector it leaves; plus trim_start of ${CUT_LIST} it is the first straight on the tube as sawn.`;

/** One sentence for each runner whose tube starts elsewhere. */
export const tubeStarts = (parts: readonly Part[], display: Display = 'mm'): string[] =>
  parts.flatMap(({ id, startTrim, table, resolved: { tooling } }) => {
    const say = (mm: number): string => formatLength(mm, display, display === 'mm' ? 1 : 3);
    const { trimStart = 0 } = tooling;
    if (startTrim === 0 && trimStart === 0) return [];
    const first = table.rows[0]!.length + startTrim;
    const sawn = trimStart === 0 ? '' : `, ${say(first + trimStart)} as sawn`;
    return [`${id}: ${startsAt(startTrim, say)}first straight on the tube ${say(first)}${sawn}`];
  });

function startsAt(startTrim: number, say: (mm: number) => string): string {
  if (startTrim === 0) return '';
  const where =
    startTrim < 0
      ? `${say(-startTrim)} after the flange's face (transition)`
      : `${say(startTrim)} within the flange's face (its step)`;
  return `tube starts ${where}: `;
}
