/** The bill of materials with masses and prices, where the whole hangs in balance, and what it costs made as chosen. */
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';
import type { Making } from '../making/report';
import { type Block, type FlowColumn, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import type { Bench } from './bench';
import { massFigure, massUnit, massWords } from './mass';
import { moneyWords } from './money';

export function materialSheets({ making, header }: Bench, paper: Paper, display: Display): Sheet[] {
  const { materials, cost } = making;
  if (materials.length === 0) return [];
  const priced = materials.some(({ cost: c }) => c !== null);
  const rows = materials.map(({ quantity, name, what, mass, each, cost: sum }) => [
    String(quantity),
    once(name),
    what,
    mass === null ? '' : massFigure(mass, display),
    ...(priced ? [each === null ? '' : moneyWords(each, ''), sum === null ? '' : moneyWords(sum, '')] : []),
  ]);
  const blocks: Block[] = [
    { kind: 'table', columns: columnsOf(display, priced ? cost.currency : null), rows },
    { kind: 'words', head: 'Mass', words: balanceWords(making, header.ports.size > 0, display) },
    ...costBlocks(making),
  ];
  return flowSheets('Bill of materials', blocks, paper);
}

/** `head flange`, `collector stub`: kinds stand before names, and a name may hold its kind already. */
const once = (name: string): string => {
  const [kind = '', ...rest] = name.split(' ');
  return rest.join(' ').toLowerCase().includes(kind) ? rest.join(' ') : name;
};

const columnsOf = (display: Display, currency: string | null): FlowColumn[] => [
  { head: 'no.', share: 12, light: true },
  { head: 'part', share: 56, bold: true },
  { head: 'what', share: 70 },
  { head: `${massUnit(display)} in all`, share: 20, light: true },
  ...(currency === null
    ? []
    : ([
        { head: 'each', share: 20, light: true },
        { head: currency || 'cost', share: 22, light: true },
      ] as const)),
];

/** In the design's own axes, as the sheets for fitting say them. */
function balanceWords({ mass }: Making, hasPorts: boolean, display: Display): string {
  const [x, y, z] = mass.centre.map((c) => lengthParts(c, display, display === 'in' ? 1 : 0).number.replace('-', '−'));
  const where = hasPorts
    ? ` It balances at X ${x}, Y ${y}, Z ${z} ${display} in the design’s axes: X along the crankshaft, Y across it, Z up.`
    : '';
  const unknown = mass.unknown.length > 0 ? ` Not counted, no density being known: ${mass.unknown.join(', ')}.` : '';
  return `${massWords(mass.total, display)} of metal, without fasteners and gaskets.${where}${unknown}`;
}

/** `what an hour costs; prices of 12 parts above`: which is seen there. */
function missingWords(missing: readonly string[]): string {
  const priced = missing.filter((m) => m.startsWith('price of ')).length;
  const others = missing.filter((m) => !m.startsWith('price of '));
  return [
    ...others,
    ...(priced > 0 ? [`the price of ${priced === 1 ? 'one thing' : `${priced} things`} in these lists`] : []),
  ].join('; ');
}

function costBlocks({ plan, groups, materials, cost }: Making): Block[] {
  const chosen = groups.map((g) => g[g.chosen]);
  const sum = (values: readonly (number | null)[]): number | null =>
    values.includes(null) ? null : values.reduce<number>((a, b) => a + b!, 0);
  const minutes = chosen.reduce((all, t) => all + t.minutes, 0);
  const others = materials.filter(({ ofStock }) => !ofStock);
  const known = others.filter(({ cost: c }) => c !== null);
  const lines: (readonly [what: string, value: number | null])[] = [
    ['Tube to buy', plan.cost],
    // Who bends has none.
    ...(chosen.some((t) => t.welds > 0)
      ? [['Gas, rod and wheels for welds between pieces', sum(chosen.map((t) => t.cost.welds))] as const]
      : []),
    [`Work on the tubes, ${(minutes / 60).toFixed(1)} h`, sum(chosen.map((t) => t.cost.work))],
    ...(known.length > 0 ? [['Other parts that have a price', sum(known.map((l) => l.cost))] as const] : []),
  ];
  const total =
    cost.total === null
      ? `Known so far: ${moneyWords(cost.known, cost.currency)}. Missing: ${missingWords(cost.missing)}.`
      : `Together ${moneyWords(cost.total, cost.currency)}.`;
  // Nothing known is nothing to show; what is missing need not be asked of who keeps no prices.
  if (lines.every(([, value]) => value === null) && cost.known === 0)
    return [{ kind: 'words', head: 'Work', words: `About ${(minutes / 60).toFixed(1)} h on the tubes, as made here.` }];
  return [
    { kind: 'heading', words: `Cost${cost.currency ? `, ${cost.currency}` : ''}` },
    {
      kind: 'table',
      columns: [
        { head: '', share: 140 },
        { head: '', share: 50, figure: true },
      ],
      rows: lines.map(([what, value]) => [what, value === null ? '?' : moneyWords(value, '')]),
    },
    { kind: 'words', words: total },
  ];
}
