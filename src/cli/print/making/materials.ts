/** The bill of materials, what it all weighs and costs. */
import type { Display } from '../../../../shared/design/types';
import type { Making } from '../../../shop/making/report';
import { columns } from '../columns';
import { measuresIn } from '../measures';

/** The shop folder's table has them all. */
const MOST = 6;
const few = (list: readonly string[]): string =>
  list.length > MOST + 1 ? `${list.slice(0, MOST).join(', ')} and ${list.length - MOST} more` : list.join(', ');

export function materialsPart({ materials, mass, cost }: Making, display?: Display): string {
  const { gap, unit } = measuresIn(display);
  const rows = materials.map((line) => [
    `${line.quantity} x`,
    line.name,
    line.what,
    line.mass === null ? '' : `${line.mass.toFixed(3)} kg`,
    line.cost === null ? '' : `${line.cost.toFixed(2)} ${cost.currency}`.trim(),
  ]);
  const unknown = mass.unknown.length > 0 ? `, without ${mass.unknown.join(', ')}: density not known` : '';
  const money = cost.total === null ? `${cost.known.toFixed(2)} ${cost.currency}`.trim() : '';
  return [
    `Bill of materials\n${columns(rows, ['right', 'left', 'left', 'right', 'right'])}`,
    `Mass ${mass.total.toFixed(3)} kg without fasteners and gaskets${unknown ? `, ${unknown.slice(2)}` : ''}; its middle at ${mass.centre.map(gap).join(', ')} ${unit}`,
    cost.total === null
      ? `Cost so far ${money}; not known: ${few(cost.missing)}`
      : `Cost ${cost.total.toFixed(2)} ${cost.currency}`.trim(),
  ].join('\n');
}
