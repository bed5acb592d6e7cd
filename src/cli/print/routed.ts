/** What `route` found, for people: the header's report, the layouts to choose from, how long it took and where it went. */
import type { Layout } from '../../../geometry';
import type { Routed } from '../commands/route';
import type { Findings } from '../route/findings';
import { offered } from '../route/offered';
import { columns } from './columns';
import { measuresIn } from './measures';
import { printReport } from './report';

/** @param where what was written, as the user named it, and why nothing was laid, if so */
export function printRouted(
  best: Layout,
  { harvest, firstValidSeconds, seconds, rounds, interrupted, reach }: Routed,
  where: { readonly output: string; readonly idle: string | null; readonly alternatives: number },
): string {
  const parts = [printReport(best.design, best.report).trimEnd()];
  if (reach.length > 0) parts.push(reach.join('\n'));
  if (where.idle) parts.push(where.idle);
  else {
    if (harvest.layouts.length > 0) parts.push(table(harvest.layouts));
    const first =
      firstValidSeconds === null ? 'none holds' : `the first that holds after ${firstValidSeconds.toFixed(2)} s`;
    const counted = rounds === 1 ? '1 round' : `${rounds} rounds`;
    parts.push(
      `${best.bends} bends, ${best.angle.toFixed(1)}° in all; ${counted} in ${seconds.toFixed(2)} s, ${first}`,
    );
  }
  const result = where.idle ? 'As it was' : best.report.ok ? 'Laid' : 'Best attempt, not every rule holds';
  const others = where.alternatives > 0 ? `, and ${where.alternatives} more beside the names asked for` : '';
  parts.push(`${interrupted ? 'Interrupted. ' : ''}${result}: written to ${where.output}${others}`);
  return `${parts.join('\n\n')}\n`;
}

function table(layouts: readonly Layout[]): string {
  const { gap, unit } = measuresIn(layouts[0]!.design.display);
  const rows = layouts.map((layout, i) => {
    const { bends, angle, margin, mass, inlets } = offered(layout);
    const order = Object.entries(inlets).map(([id, runners]) => `${id}: ${runners.map((r) => r ?? '–').join(' ')}`);
    return [
      String(i + 1),
      String(bends),
      `${angle.toFixed(1)}°`,
      margin === null ? '–' : gap(margin),
      mass === null ? '–' : mass.toFixed(3),
      order.join('; '),
    ];
  });
  const head = ['', 'bends', 'turned', `to spare ${unit}`, 'mass kg', 'inlets'];
  return `Layouts\n${columns([head, ...rows], ['right', 'right', 'right', 'right', 'right', 'left'])}`;
}

/** One line, short enough for a narrow terminal. */
export function progressLine({ ended, best }: Findings, seconds: number): string {
  const so = !best
    ? 'nothing yet'
    : best.report.ok
      ? `${best.bends} bends, ${best.angle.toFixed(0)}°`
      : 'none holds yet';
  return `${seconds.toFixed(1)} s, round ${ended + 1}: ${so}`;
}
