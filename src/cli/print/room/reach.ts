/** What tools reach, counted, with a line for each that they do not plainly reach; and where the wrap must end for it. */
import type { AccessEntry, AccessReport, Reach } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import { formatLength } from '../../../../shared/units';
import { REACH_WORDS, stretchesOf, tapeLength, unreadWords, wrapWords } from '../../../shop/fitting/words';
import { columns } from '../columns';

export function reachLines({ entries, unread }: AccessReport): string {
  if (entries.length === 0) return '';
  const of = (kind: AccessEntry['kind']) => entries.filter((e) => e.kind === kind);
  const counts = [summary('fastener', of('fastener')), summary('service point', of('service'))];
  const hard = entries.filter((e) => e.reach !== 'reachable');
  return [
    'Reach',
    ...counts.filter((words) => words !== '').map((words) => `  ${words}`),
    ...hard.map((e) => `  ${e.message}`),
    ...(unread ? [`  ${unreadWords(unread)}`] : []),
  ].join('\n');
}

/** `10 of 12 fasteners are reachable; 2 before wrapping only: f1 stud 3, f1 stud 5.` */
function summary(noun: string, entries: readonly AccessEntry[]): string {
  if (entries.length === 0) return '';
  const plainly = entries.filter((e) => e.reach === 'reachable').length;
  const all = `${noun}${entries.length === 1 ? '' : 's'}`;
  const verb = entries.length === 1 ? 'is' : 'are';
  const head = plainly === entries.length ? `All ${all} ${verb}` : `${plainly} of ${entries.length} ${all} ${verb}`;
  const others = (['one-tool', 'before-wrapping', 'blocked'] as const satisfies readonly Reach[]).flatMap((reach) => {
    const ids = entries.filter((e) => e.reach === reach).map((e) => e.id);
    return ids.length > 0 ? [`${ids.length} ${REACH_WORDS[reach]}: ${ids.join(', ')}`] : [];
  });
  const start = entries.length === 1 && plainly === 1 ? `The ${noun} is` : head;
  return `${[`${start} reachable`, ...others].join('; ')}.`;
}

/** A row for each stretch, from the tube's start on, so that nothing is left to guess. */
export function wrapTable(design: Design, { wrap }: AccessReport): string {
  if (!design.wrap || wrap.length === 0) return '';
  const display = design.display ?? 'mm';
  const rows = wrap.flatMap((plan) =>
    stretchesOf(plan).map(({ from, to, bare }, i) => [
      i === 0 ? plan.runner : '',
      tapeLength(from, display).number,
      tapeLength(to, display).number,
      bare === null ? 'wrapped' : `bare: ${bare}`,
    ]),
  );
  const head = ['runner', 'from', 'to', ''];
  const thickness = formatLength(design.wrap.thickness, display);
  return `Wrap, ${wrapWords(design.wrap, thickness)}; ${display} along the tube\n${columns([head, ...rows], ['left', 'right', 'right', 'left'])}`;
}
