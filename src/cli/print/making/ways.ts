/** Both ways of every tube group side by side. */
import type { Display } from '../../../../shared/design/types';
import type { Making, TubeGroup, WayTotals } from '../../../shop/making/report';
import { type Align, columns } from '../columns';
import { measuresIn } from '../measures';

const ALIGN: readonly Align[] = ['left', 'left', 'left', ...Array<Align>(8).fill('right')];

export function waysPart({ groups, cost: { currency } }: Making, display?: Display): string {
  const { length, unit } = measuresIn(display);
  if (groups.length === 0) return '';
  const money = currency || 'money';
  const head = ['tube', 'way', '', 'pieces', 'cuts', 'welds', 'bends', 'kg', 'kg of stock', 'hours', money];
  const rows = groups.flatMap(({ tube, chosen, welded, bent }) =>
    [welded, bent].map((way, i) => [i === 0 ? tube : '', ...wayRow(way, way.way === chosen)]),
  );
  const missing = [...new Set(groups.flatMap(({ welded, bent }) => [...welded.missing, ...bent.missing]))];
  const note = missing.length > 0 ? `\n  Not in the money, for want of a price: ${missing.join(', ')}` : '';
  return [`Both ways of making\n${columns([head, ...rows], ALIGN)}${note}`, ...groups.flatMap(legsOf)].join('\n\n');

  function legsOf({ tube, legs }: TubeGroup): string[] {
    if (legs.length < 2) return [];
    const legRows = legs.map(({ longestLeg, isChosen, bought, totals }) => [
      longestLeg === null ? 'all that stock has' : length(longestLeg),
      [isChosen ? 'chosen' : '', totals.possible ? '' : 'cannot be made'].filter(Boolean).join(', '),
      ...[bought, totals.pieces, totals.welds].map(String),
      moneyOf(totals),
    ]);
    const legHead = ['longest leg', '', 'bought', 'pieces', 'welds', money];
    const align: readonly Align[] = ['left', 'left', 'right', 'right', 'right', 'right'];
    return [
      `Welding up ${tube} with shorter legs on its bends (workshop/longestLeg), ${unit}\n${columns([legHead, ...legRows], align)}`,
    ];
  }
}

/** What is known of it; nothing known is no nought. */
function moneyOf({ cost: { stock, welds, work } }: WayTotals): string {
  const parts = [stock, welds, work];
  const known = parts.reduce<number>((sum, part) => sum + (part ?? 0), 0);
  if (!parts.includes(null)) return known.toFixed(2);
  return known > 0 ? `over ${known.toFixed(2)}` : '?';
}

function wayRow(way: WayTotals, chosen: boolean): string[] {
  const name = way.way === 'welded' ? 'welded up' : 'bent';
  const state = [chosen ? 'chosen' : '', way.possible ? '' : 'cannot be made'].filter(Boolean).join(', ');
  return [
    name,
    state,
    ...[way.pieces, way.cuts, way.welds, way.bends].map(String),
    way.mass?.toFixed(2) ?? '?',
    way.stockMass?.toFixed(2) ?? '?',
    (way.minutes / 60).toFixed(1),
    moneyOf(way),
  ];
}
