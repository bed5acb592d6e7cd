/** A cutting plan in words: bars cut alike on one line, what is bought, and how near to the best it is. Lengths in the asked unit. */
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { PlacedStock } from '../../shop/making/report';
import type { BarProblem, BarStock } from '../../shop/nest/bars';
import type { Cuts } from '../../shop/nest/cutAll';
import { gathered } from '../../shop/nest/gathered';
import { columns } from './columns';

export function printNest({ pieces, stock, kerf, endTrim }: BarProblem, cuts: Cuts, display: Display): string {
  const number = (mm: number) => lengthParts(mm, display, display === 'in' ? 3 : 1).number;
  const length = (mm: number) => `${number(mm)} ${display}`;
  const lengths = new Map(pieces.map((piece) => [piece.id, piece.length]));
  const counted = (ids: readonly string[]) =>
    gathered(ids, (id) => number(lengths.get(id)!)).map(
      (alike) => `${alike.length} × ${number(lengths.get(alike[0]!)!)}`,
    );
  const barOf = (used: PlacedStock): BarStock => stock.find(({ id }) => id === used.stock)!;
  const all = pieces.reduce((sum, piece) => sum + piece.length, 0);
  const alike = gathered(cuts.used, (used) => {
    const its = used.cuts.map(({ piece }) => number(lengths.get(piece)!));
    return [used.stock, used.source, ...its].join();
  });
  const rows = alike.map(([first, ...others]) => [
    `${1 + others.length} ×`,
    length(barOf(first!).length),
    first!.source === 'shelf' ? 'from the shelf' : 'bought',
    counted(first!.cuts.map(({ piece }) => piece)).join(', '),
    `left ${length(first!.left)}`,
  ]);
  const says = [
    `${count(pieces.length, 'piece')}, ${length(all)} in all; a cut takes ${length(kerf)}, ${length(endTrim)} comes off both ends of every bar`,
    '',
    ...(rows.length > 0 ? [columns(rows, ['right', 'right', 'left', 'left', 'left']), ''] : []),
    ...bought(stock, cuts, length),
    best(cuts, length),
  ];
  if (cuts.over.length > 0)
    says.push(
      `Left over, ${count(cuts.over.length, 'piece')}: ${counted(cuts.over).join(', ')} ${display}; the shelf has no more: give a --bar that can be bought`,
    );
  return `${says.join('\n')}\n`;
}

const count = (n: number, of: string): string => `${n} ${n === 1 ? of : `${of}s`}`;

function bought(stock: readonly BarStock[], { used }: Cuts, length: (mm: number) => string): string[] {
  const lines = stock.flatMap((bar) => {
    const n = used.filter((u) => u.stock === bar.id && u.source === 'bought').length;
    if (n === 0) return [];
    return [
      `${n} × ${length(bar.length)}${bar.price === undefined ? '' : ` at ${bar.price}: ${round(n * bar.price)}`}`,
    ];
  });
  return [lines.length > 0 ? `To buy: ${lines.join('; ')}` : 'Nothing to buy.'];
}

const round = (money: number): string => String(Number(money.toFixed(2)));

function best({ least, value, bound, proved }: Cuts, length: (mm: number) => string): string {
  const say = (n: number) => (least === 'money' ? round(n) : length(n));
  const words = least[0]!.toUpperCase() + least.slice(1);
  if (proved) return `${words}: ${say(value)}. No plan has less: proved.`;
  return `${words}: ${say(value)}. The search ended before this was proved: no plan has less than ${say(bound)}.`;
}
