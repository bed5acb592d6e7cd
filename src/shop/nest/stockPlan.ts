/**
 * What to buy and how every piece is cut from it: one search for all bars of a tube, one for all bends of a tube and radius. Where
 * the workshop lists none of a tube, one is assumed on sale and marked so. What cannot be cut is a remark; the rest is planned all
 * the same. mm, degrees, the workshop's currency.
 */
import type { Display, StockBar, StockBend, Tube, Workshop } from '../../../shared/design/types';
import { assumedBar, assumedBend, settingsOf } from '../../../shared/stock/workshop';
import type { BuyLine, NestPart, Remark, StockPlan } from '../making/report';
import { cutBars } from './bars';
import { cutBends } from './bends';
import type { Cuts } from './cutAll';
import { barRemarks, bendRemarks, fitsBar, fitsBend, noRadius } from './remarks';
import { alike, sameTube } from './sameTube';
import { figure, type Say, sayIn } from './words';

export type BarPiece = { readonly piece: string; readonly tube: Tube; readonly length: number };
export type BendPiece = {
  readonly piece: string;
  readonly tube: Tube;
  readonly radius: number;
  readonly angle: number;
  /** Straight that it keeps before and after the arc. */
  readonly legs: readonly [number, number];
};

export type PlanOptions = {
  /** In which unit its words are. */
  readonly display?: Display;
  /** For each search. */
  readonly seconds?: number;
};

export async function stockPlan(
  workshop: Workshop | undefined,
  bars: readonly BarPiece[],
  bends: readonly BendPiece[],
  { display = 'mm', seconds }: PlanOptions = {},
): Promise<StockPlan> {
  const say = sayIn(display);
  const settings = settingsOf(workshop);
  const ids = new Set([...(settings.bars ?? []), ...(settings.bends ?? [])].map(({ id }) => id));
  const searches = [
    ...grouped(bars, (a, b) => sameTube(a.tube, b.tube)).map((group) => barsOf(group, settings, ids, say, seconds)),
    ...grouped(bends, (a, b) => sameTube(a.tube, b.tube) && alike(a.radius, b.radius)).map((group) =>
      bendsOf(group, settings, ids, say, seconds),
    ),
  ];
  const found: Awaited<(typeof searches)[number]>[] = [];
  for (const search of searches) found.push(await search);
  const buy = found.flatMap((one) => one.buy);
  const costs = buy.map(({ cost }) => cost);
  return {
    parts: found.flatMap(({ part }) => (part ? [part] : [])),
    buy,
    cost: costs.includes(null) ? null : costs.reduce<number>((sum, cost) => sum + cost!, 0),
    remarks: found.flatMap(({ remarks }) => remarks),
  };
}

type Settings = ReturnType<typeof settingsOf>;
type Found = { readonly part?: NestPart; readonly buy: readonly BuyLine[]; readonly remarks: readonly Remark[] };

function grouped<T>(pieces: readonly T[], same: (a: T, b: T) => boolean): T[][] {
  const groups: T[][] = [];
  for (const piece of pieces) {
    const group = groups.find(([first]) => same(first!, piece));
    if (group) group.push(piece);
    else groups.push([piece]);
  }
  return groups;
}

async function barsOf(
  pieces: readonly BarPiece[],
  settings: Settings,
  ids: ReadonlySet<string>,
  say: Say,
  seconds?: number,
): Promise<Found> {
  const { tube } = pieces[0]!;
  const { kerf, endTrim } = settings;
  const listed = (settings.bars ?? []).filter((bar) => sameTube(bar, tube));
  const assumed = listed.length === 0;
  const bars = assumed ? [assumedBar(tube, freeId(`bar-${sizeOf(tube)}`, ids))] : listed;
  const fitting = pieces.filter(({ length }) => bars.some((bar) => fitsBar(length, bar, endTrim)));
  const what = `straight tube ${say.tube(tube)}`;
  const cuts = await cutBars({
    pieces: fitting.map(({ piece, length }) => ({ id: piece, length })),
    stock: bars.map((bar) => ({ ...bar, count: bar.count ?? 0, buy: bar.buy ?? true })),
    kerf,
    endTrim,
    ...(seconds === undefined ? {} : { seconds }),
  });
  return {
    ...(fitting.length > 0 ? { part: partOf(what, 'bar', cuts, bars) } : {}),
    buy: buyLines(cuts, bars, assumed, (bar) => `bar ${say.length(bar.length)}, ${say.tube(tube)}`),
    remarks: [...barRemarks(pieces, bars, settings, say), ...cutRemarks(cuts, what, 'workshop/bars', say)],
  };
}

async function bendsOf(
  pieces: readonly BendPiece[],
  settings: Settings,
  ids: ReadonlySet<string>,
  say: Say,
  seconds?: number,
): Promise<Found> {
  const { tube, radius } = pieces[0]!;
  const ofTube = (settings.bends ?? []).filter((bend) => sameTube(bend, tube));
  const assumed = ofTube.length === 0;
  const id = freeId(`u-bend-${sizeOf(tube)}-r${figure(radius)}`, ids);
  const bends = assumed ? [assumedBend(tube, radius, id)] : ofTube.filter((bend) => alike(bend.radius, radius));
  if (bends.length === 0) return { buy: [], remarks: [noRadius(pieces, ofTube, say)] };
  const fitting = pieces.filter((piece) => bends.some((bend) => fitsBend(piece, bend)));
  const what = `bends of ${say.length(radius)} radius, ${say.tube(tube)}`;
  const cuts = await cutBends({
    pieces: fitting.map(({ piece, angle, legs }) => ({ id: piece, angle, legs })),
    stock: bends.map((bend) => ({ ...bend, count: bend.count ?? 0, buy: bend.buy ?? true })),
    radius,
    kerf: settings.kerf,
    ...(seconds === undefined ? {} : { seconds }),
  });
  const words = ({ angle, legs }: StockBend) =>
    `bend ${figure(angle)}°, radius ${say.length(radius)}, legs ${legs.map(say.bare).join(' and ')} ${say.unit}, ${say.tube(tube)}`;
  return {
    ...(fitting.length > 0 ? { part: partOf(what, 'bend', cuts, bends) } : {}),
    buy: buyLines(cuts, bends, assumed, words),
    remarks: [...bendRemarks(pieces, bends, settings, say), ...cutRemarks(cuts, what, 'workshop/bends', say)],
  };
}

const partOf = (
  what: string,
  kind: 'bar' | 'bend',
  { used, least, value, bound, proved }: Cuts,
  stock: readonly (StockBar | StockBend)[],
): NestPart => ({
  what,
  kind,
  used: used.map((one) => ({ ...one, of: stock.find(({ id }) => id === one.stock)! })),
  least,
  value,
  bound,
  proved,
});

function buyLines<S extends StockBar | StockBend>(
  { used }: Cuts,
  stock: readonly S[],
  assumed: boolean,
  what: (one: S) => string,
): BuyLine[] {
  return stock.flatMap((one): BuyLine[] => {
    const count = used.filter((u) => u.stock === one.id && u.source === 'bought').length;
    if (count === 0) return [];
    const each = one.price ?? null;
    return [{ stock: one.id, what: what(one), count, each, cost: each === null ? null : each * count, assumed }];
  });
}

function cutRemarks({ over, proved, value, bound, least }: Cuts, what: string, where: string, say: Say): Remark[] {
  const amount = (n: number): string => (least.startsWith('length') ? say.length(n) : figure(n));
  const remarks: Remark[] = [];
  if (over.length > 0)
    remarks.push({
      where,
      message: `${what}: ${over.length} ${over.length === 1 ? 'piece is' : 'pieces are'} left over (${over.join(', ')}): the shelf has no more, and nothing that would do can be bought; raise a count, or let one be bought`,
      stops: true,
    });
  if (!proved)
    remarks.push({
      where,
      message: `${what}: the search ended before its plan was proved best: ${least} ${amount(value)}, and no plan can have less than ${amount(bound)}`,
      stops: false,
    });
  return remarks;
}

const sizeOf = ({ outsideDiameter, wall, material }: Tube): string =>
  `${figure(outsideDiameter)}x${figure(wall)}${material ? `-${material}` : ''}`;

function freeId(wish: string, taken: ReadonlySet<string>): string {
  let id = wish;
  for (let n = 2; taken.has(id); n++) id = `${wish}-${n}`;
  return id;
}
