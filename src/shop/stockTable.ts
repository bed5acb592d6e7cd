/**
 * `stock.csv`: what to buy, then every cut in the order it is sawn, by stock. A row `buy` is a line of the shopping list, a row `cut`
 * one piece, a row `left` what remains of one length. Bars in mm from the first end, bends in degrees from where the first leg ends.
 */
import { type Cell, decimal, writeCsv } from '../formats/csv/csv';
import type { BuyLine, StockCut, StockPlan, UsedStock } from './making/report';

export const STOCK_TABLE = 'stock.csv';

const COLUMNS = [
  'row',
  'kind',
  'stock',
  'number',
  'source',
  'what',
  'count',
  'each',
  'cost',
  'piece',
  'from',
  'to',
  'unit',
  'first_leg',
  'second_leg',
  'reversed',
  'left',
] as const;

type Row = Partial<Record<(typeof COLUMNS)[number], Cell>>;

export function stockTable({ buy, parts }: StockPlan): string {
  const kinds = new Map(parts.flatMap(({ used }) => used.map(({ stock, kind }) => [stock, kind] as const)));
  const whats = new Map(parts.flatMap(({ used, what }) => used.map((one) => [one, what] as const)));
  const rows = [
    ...buy.map((line) => bought(line, kinds.get(line.stock) ?? '')),
    ...parts.flatMap(({ used }) => used.flatMap((one) => cut(one, whats.get(one)!))),
  ];
  return writeCsv(
    COLUMNS,
    rows.map((row) => COLUMNS.map((column) => row[column] ?? '')),
  );
}

const bought = ({ stock, what, count, each, cost, assumed }: BuyLine, kind: string): Row => ({
  row: 'buy',
  kind,
  stock,
  source: assumed ? 'assumed' : 'bought',
  what,
  count: String(count),
  each: each === null ? '' : decimal(each),
  cost: cost === null ? '' : decimal(cost),
});

function cut({ stock, kind, number, source, cuts, left }: UsedStock, what: string): Row[] {
  const unit = kind === 'bar' ? 'mm' : 'deg';
  const common = { kind, stock, number: String(number), source, what, unit } as const;
  return [
    ...cuts.map(
      ({ piece, from, to, legs, reversed }: StockCut): Row => ({
        row: 'cut',
        ...common,
        piece,
        from: decimal(from),
        to: decimal(to),
        ...(legs ? { first_leg: decimal(legs[0]), second_leg: decimal(legs[1]) } : {}),
        ...(kind === 'bend' ? { reversed: reversed ? 'yes' : 'no' } : {}),
      }),
    ),
    { row: 'left', ...common, left: decimal(left) },
  ];
}
