/** How every piece lies in its stock, how good that is, and what to buy. */
import type { Display } from '../../../../shared/design/types';
import type { Making, NestPart, UsedStock } from '../../../shop/making/report';
import { columns } from '../columns';
import { measuresIn } from '../measures';

export function stockPart({ plan, cost: { currency } }: Making, display?: Display): string {
  const nests = plan.parts.map((part) => nest(part, display));
  const buy = plan.buy.map(({ what, count, each, cost, assumed }) => [
    `${count} x`,
    what,
    each === null ? 'no price' : `${each.toFixed(2)} each`,
    cost === null ? '' : `${cost.toFixed(2)} ${currency}`.trim(),
    assumed ? 'assumed to be on sale: list what you can have under workshop' : '',
  ]);
  const list = buy.length > 0 ? `Buy\n${columns(buy, ['right', 'left', 'right', 'right', 'left'])}` : '';
  return [...nests, list].filter(Boolean).join('\n\n');
}

function nest({ what, kind, used, least, value, bound, proved }: NestPart, display?: Display): string {
  const { length, unit } = measuresIn(display);
  const size = (n: number): string => (kind === 'bar' ? length(n) : `${n.toFixed(2)}°`);
  const rows = used.map((one: UsedStock) => [
    `${one.stock} ${one.number}`,
    one.source === 'shelf' ? 'shelf' : 'buy',
    one.cuts.map(({ piece, reversed }) => `${piece}${reversed ? ' (turned round)' : ''}`).join(', '),
    `${size(one.left)} left`,
  ]);
  const isLength = least.startsWith('length');
  const plain = (n: number): string => (Number.isInteger(n) ? String(n) : n.toFixed(2));
  const amount = (n: number): string => (isLength ? `${length(n)} ${unit}` : plain(n));
  const best = proved ? 'the least there is' : `not proved: no plan has less than ${amount(bound)}`;
  return `${what}: ${least} ${amount(value)}, ${best}\n${columns(rows, ['left', 'left', 'left', 'right'])}`;
}
