/** Why a piece cannot be cut from the stock there is: by how much, and what would do. mm and degrees, said as the design is shown. */
import type { StockBar, StockBend } from '../../../shared/design/types';
import { arcLength } from '../arcs';
import type { Remark } from '../making/report';
import { lies, NO_LEG } from './bends';
import { SAME_ANGLE } from './sameTube';
import type { BarPiece, BendPiece } from './stockPlan';
import { figure, named, type Say } from './words';

type Saw = { readonly kerf: number; readonly endTrim: number };
const EPSILON = 1e-6;

export const fitsBar = (length: number, bar: StockBar, endTrim: number): boolean =>
  length <= bar.length - 2 * endTrim + EPSILON;

export const fitsBend = ({ piece, angle, legs }: BendPiece, bend: StockBend): boolean =>
  lies({ id: piece, angle, legs }, { ...bend, count: 0, buy: true }) !== null;

const stopping = (where: string, message: string): Remark => ({ where, message, stops: true });

export function barRemarks(pieces: readonly BarPiece[], bars: readonly StockBar[], saw: Saw, say: Say): Remark[] {
  const longest = Math.max(...bars.map(({ length }) => length));
  const usable = longest - 2 * saw.endTrim;
  const tooLong = pieces.filter(({ length }) => !bars.some((bar) => fitsBar(length, bar, saw.endTrim)));
  if (usable <= 0)
    return [
      stopping(
        'workshop/endTrim',
        `${say.length(saw.endTrim)} is trimmed off both ends of a bar, and the longest of ${say.tube(pieces[0]!.tube)} is ${say.length(longest)}: nothing is left of it; trim less than ${say.length(longest / 2)}, or list a longer bar`,
      ),
    ];
  return [
    ...tooLong.map(({ piece, length, tube }) =>
      stopping(
        'workshop/bars',
        `${piece}: ${say.length(length)} is ${say.length(length - usable)} more than the longest bar of ${say.tube(tube)} gives, ${say.length(Math.max(0, usable))} of ${say.bare(longest)}; list a bar of at least ${say.atLeast(length + 2 * saw.endTrim)}, or split the piece`,
      ),
    ),
    ...kerfRemark(
      pieces.map(({ piece, length }) => ({ piece, length })),
      saw.kerf,
      'long',
      say,
    ),
  ];
}

/** Degrees that would do. */
const ceil = (value: number): string => figure(Math.ceil(value * 100 - EPSILON) / 100);

function kerfRemark(
  pieces: readonly { piece: string; length: number }[],
  kerf: number,
  what: string,
  say: Say,
): Remark[] {
  const thin = pieces.filter(({ length }) => length < kerf);
  if (thin.length === 0) return [];
  const least = thin.reduce((a, b) => (b.length < a.length ? b : a));
  const others = thin.length > 1 ? `, as are ${named(thin.filter((t) => t !== least).map(({ piece }) => piece))}` : '';
  return [
    stopping(
      'workshop/kerf',
      `a cut takes ${say.length(kerf)} and ${least.piece} is only ${say.length(least.length)} ${what}${others}: such a piece does not survive the saw; lower the kerf below ${say.length(least.length)}, or make the piece part of its neighbour`,
    ),
  ];
}

export function noRadius(pieces: readonly BendPiece[], ofTube: readonly StockBend[], say: Say): Remark {
  const { radius, tube } = pieces[0]!;
  const radii = [...new Set(ofTube.map((bend) => say.bare(bend.radius)))].sort((a, b) => Number(a) - Number(b));
  return stopping(
    'workshop/bends',
    `no bend of ${say.length(radius)} radius in ${say.tube(tube)} is on the shelf or for sale, for ${named(pieces.map(({ piece }) => piece))}; there ${radii.length === 1 ? 'is' : 'are'} ${radii.join(', ')} ${say.unit}: list one, or lay the tube with a radius there is`,
  );
}

export function bendRemarks(
  pieces: readonly BendPiece[],
  bends: readonly StockBend[],
  { kerf }: Saw,
  say: Say,
): Remark[] {
  const { radius } = pieces[0]!;
  return [
    ...pieces
      .filter((piece) => !bends.some((bend) => fitsBend(piece, bend)))
      .map((piece) => stopping('workshop/bends', `${piece.piece}: ${whyNot(piece, bends, say)}`)),
    ...kerfRemark(
      pieces.map(({ piece, angle }) => ({ piece, length: arcLength({ angle, radius }) })),
      kerf,
      'long on its arc',
      say,
    ),
  ];
}

function whyNot({ angle, radius, legs }: BendPiece, bends: readonly StockBend[], say: Say): string {
  const widest = Math.max(...bends.map((bend) => bend.angle));
  const of = `of ${say.length(radius)} radius`;
  if (angle > widest + SAME_ANGLE)
    return `it turns ${figure(angle)}°, ${figure(angle - widest)}° more than the widest bend ${of}, ${figure(widest)}°; list a bend of at least ${ceil(angle)}°, or split the piece`;
  const longest = Math.max(...bends.map((bend) => Math.max(...bend.legs)));
  const leg = Math.max(...legs);
  if (leg > longest + EPSILON)
    return `it keeps a leg of ${say.length(leg)}, ${say.length(leg - longest)} more than the longest leg of a bend ${of}, ${say.length(longest)}; list a bend whose leg is at least ${say.atLeast(leg)}, or weld straight tube to it`;
  const both = legs.every((l) => l > NO_LEG);
  const there = bends.map((bend) => `${figure(bend.angle)}° with legs of ${bend.legs.map(say.bare).join(' and ')}`);
  const wanted = both
    ? `it keeps both its legs, ${legs.map(say.bare).join(' and ')} ${say.unit}, so it must be a whole bend of ${figure(angle)}°`
    : `it turns ${figure(angle)}° and keeps a leg of ${say.length(leg)}`;
  return `${wanted}; ${of} there is ${there.join(', ')} ${say.unit}: list one that has both, or weld straight tube to the piece`;
}
