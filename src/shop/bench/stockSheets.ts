/**
 * What to buy, and how every piece is cut from bars and bends: each drawn to scale with its pieces, what is left, and whether less
 * could do. What the workshop does not list but is taken as on sale is marked as assumed wherever it stands.
 */

import type { Display } from '../../../shared/design/types';
import { settingsOf } from '../../../shared/stock/workshop';
import { arcAngle } from '../arcs';
import type { NestPart, UsedStock } from '../making/report';
import { type Block, type FlowColumn, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';
import { isBend, legsIn, stockLength } from '../stockLayout';
import { type Bench, stepsOf } from './bench';
import { dialFigure, lengthFigure, type Steps, tapeFigure } from './figures';
import { moneyWords } from './money';
import { nestFigure } from './nestFigure';
import { round, sectionWords, stockWords } from './stockWords';

export function stockSheets(bench: Bench, paper: Paper, display: Display): Sheet[] {
  const { plan } = bench.making;
  if (plan.parts.length === 0 && plan.buy.length === 0) return [];
  const steps = stepsOf(bench, display);
  const { kerf, endTrim } = settingsOf(bench.header.design.workshop);
  const assumed = new Set(plan.buy.filter((b) => b.assumed).map((b) => b.stock));
  const blocks = [
    ...buyBlocks(bench, display),
    ...plan.remarks.map(({ message }): Block => ({ kind: 'words', words: message })),
    ...plan.parts.flatMap((part, i) => {
      const first = plan.parts.findIndex(({ kind }) => kind === part.kind) === i;
      return partBlocks(part, first, assumed, { currency: bench.making.cost.currency, kerf, endTrim }, steps);
    }),
  ];
  return flowSheets('Buy and cut', blocks, paper);
}

const BUY: readonly FlowColumn[] = [
  { head: 'how many', share: 20, figure: true },
  { head: 'what', share: 104 },
  { head: 'called', share: 34, bold: true },
  { head: 'each', share: 20, light: true },
  { head: 'cost', share: 20, figure: true },
];

function buyBlocks({ making }: Bench, display: Display): Block[] {
  const { plan, cost } = making;
  if (plan.buy.length === 0) return [{ kind: 'words', head: 'Buy', words: 'No tube: what is on the shelf is enough.' }];
  const of = new Map(plan.parts.flatMap((p) => p.used).map((u) => [u.stock, u.of]));
  const money = (value: number | null): string => (value === null ? '' : moneyWords(value, ''));
  const rows = plan.buy.map(({ stock, what, count, each, cost: sum, assumed }) => {
    const known = of.get(stock);
    const words = known ? stockWords(known, display) : what;
    return [
      String(count),
      `${words}${assumed ? ' (ASSUMED to be on sale)' : ''}`,
      assumed ? '' : stock,
      money(each),
      money(sum),
    ];
  });
  const total =
    plan.cost === null
      ? 'A price is missing, so there is no sum: put it on the shelf’s entry.'
      : `Together ${moneyWords(plan.cost, cost.currency)}.`;
  return [
    { kind: 'heading', words: `To buy${cost.currency ? `, ${cost.currency}` : ''}` },
    { kind: 'table', ...withoutEmpty(BUY, rows) },
    { kind: 'words', words: total },
    ...(plan.buy.some((b) => b.assumed)
      ? [
          {
            kind: 'words',
            head: 'Assumed',
            words:
              'The workshop lists no such tube, so a usual size was taken. Ask what your supplier has, enter it in the workshop, and print this again before you buy or cut.',
          } as const,
        ]
      : []),
  ];
}

/** No column that has nothing to say: of names where all is assumed, of prices where there are none. */
function withoutEmpty(columns: readonly FlowColumn[], rows: readonly (readonly string[])[]) {
  const filled = columns.map((_, c) => rows.some((row) => row[c] !== ''));
  return {
    columns: columns.filter((_, c) => filled[c]),
    rows: rows.map((row) => row.filter((_, c) => filled[c])),
  };
}

/** @param first of its kind: how it is read is said once */
function partBlocks(
  part: NestPart,
  first: boolean,
  assumed: ReadonlySet<string>,
  { currency, kerf, endTrim }: { readonly currency: string; readonly kerf: number; readonly endTrim: number },
  steps: Steps,
): Block[] {
  const longest = Math.max(...part.used.map(({ of }) => stockLength(of)));
  const [one] = part.used;
  const tube = one ? `, ${sectionWords(one.of, steps.display)}` : '';
  return [
    { kind: 'heading', words: `${part.kind === 'bar' ? 'Bars' : 'Stock bends, unrolled'}${tube}` },
    {
      kind: 'words',
      words: `${leastWords(part, currency, steps)}${first ? ` ${howWords(part, kerf, endTrim, steps)}` : ''}${kerfWords(part, kerf)}${firstLegWords(part, steps)}`,
    },
    ...part.used.flatMap((used): Block[] => [
      { kind: 'words', head: '', words: '' },
      { kind: 'figure', ...nestFigure(used, longest) },
      { kind: 'words', words: cutsWords(used, assumed, steps) },
    ]),
  ];
}

function howWords({ kind, used }: NestPart, kerf: number, endTrim: number, { display }: Steps): string {
  const exact = (mm: number): string => `${lengthFigure(mm, display)} ${display}`;
  if (kind === 'bar')
    return [
      'Cut from the left, measuring each piece anew and sawing behind the mark',
      ...(endTrim > 0 ? [`the first ${exact(endTrim)} are trimmed off`] : []),
      ...(kerf > 0 ? [`a saw cut takes ${exact(kerf)}`] : []),
      'crossed out is left over.',
    ].join('; ');
  const turned = used.some(({ cuts }) => cuts.some((cut) => cut.reversed))
    ? ' Other way round: the piece’s out end lies at the left, its in end at the right.'
    : '';
  return `Degrees count from where the first leg, at the left, meets the arc; arcs are shaded, crossed out is left over.${turned}`;
}

/** Which leg is the first, where it matters. */
function firstLegWords({ used }: NestPart, { display }: Steps): string {
  const named = used.flatMap(({ stock, of }) =>
    isBend(of) && Math.abs(of.legs[0] - of.legs[1]) > 0.005
      ? [`${stock} the one of ${round(of.legs[0], display)}`]
      : [],
  );
  return named.length > 0 ? ` First leg: of ${[...new Set(named)].join(', of ')}.` : '';
}

/** What a cut takes of an arc. */
function kerfWords({ kind, used: [one] }: NestPart, kerf: number): string {
  if (kind !== 'bend' || !one || !isBend(one.of) || !(kerf > 0)) return '';
  return ` A saw cut takes ${arcAngle(kerf, one.of.radius).toFixed(1)}° of the middle arc: saw beside the mark, outside the piece.`;
}

/** What was made least, and whether less could do. */
function leastWords({ least, value, bound, proved }: NestPart, currency: string, steps: Steps): string {
  const say = (amount: number): string =>
    least.includes('money')
      ? moneyWords(amount, currency)
      : least.includes('length')
        ? round(amount, steps.display)
        : String(Number(amount.toFixed(2)));
  if (proved) return `Least ${least}: ${say(value)}, and no plan can have less.`;
  return `Little ${least}: ${say(value)}; no plan can have less than ${say(bound)}, and whether one has was not settled.`;
}

function cutsWords(used: UsedStock, assumed: ReadonlySet<string>, steps: Steps): string {
  const { stock, kind, number, source, cuts, left, of } = used;
  const from = source === 'shelf' ? 'from the shelf' : 'to buy';
  const name = assumed.has(stock) ? `Assumed ${kind}` : stock;
  const size = isBend(of) ? '' : `, ${round(of.length, steps.display)}`;
  const pieces = [...cuts]
    .sort((a, b) => a.from - b.from)
    .map((cut) => {
      const turned = cut.reversed ? ', other way round' : '';
      if (!isBend(of)) return `${cut.piece}: ${tapeFigure(cut.to - cut.from, steps)}`;
      const [first, second] = legsIn(cut);
      const legs = [
        ...(first > 0.005 ? [`${tapeFigure(first, steps)} ${steps.display} of the first leg`] : []),
        ...(second > 0.005 ? [`${tapeFigure(second, steps)} ${steps.display} of the second`] : []),
      ];
      const kept = legs.length > 0 ? ` with ${legs.join(' and ')}` : '';
      return `${cut.piece}: ${dialFigure(cut.from, steps)} to ${dialFigure(cut.to, steps)}${kept}${turned}`;
    });
  const rest = isBend(of) ? dialFigure(left, steps) : `${tapeFigure(left, steps)} ${steps.display}`;
  return `${name} no. ${number}, ${from}${size} – ${pieces.join(' · ')}. Left: ${rest}.`;
}
