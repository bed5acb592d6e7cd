/**
 * Straight pieces out of bars. On one bar n pieces take their lengths and n − 1 cuts, or n where something is left: with room for
 * the bar's length and one kerf, each piece takes its length and one. The end trim comes off both ends of every length, from the
 * shelf too, as nobody knows how those were sawn; the cuts that take it off lie within it. mm.
 */
import type { PlacedStock, StockCut } from '../making/report';
import type { Stock } from './fill';
import { gathered } from './gathered';
import { type Bin, type Supply, share } from './share';

export type CutPiece = { readonly id: string; readonly length: number };
export type BarStock = {
  readonly id: string;
  readonly length: number;
  /** On the shelf. */
  readonly count: number;
  readonly buy: boolean;
  readonly price?: number;
};

export type BarProblem = {
  readonly pieces: readonly CutPiece[];
  readonly stock: readonly BarStock[];
  readonly kerf: number;
  readonly endTrim: number;
  /** The search is given up after this long, with what it has; default SECONDS. */
  readonly seconds?: number;
};

export type Cuts = {
  readonly used: readonly PlacedStock[];
  /** Ids of pieces that there is no stock for. */
  readonly over: readonly string[];
  readonly least: string;
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
};

export const SECONDS = 20;
/** Lengths that differ by less are alike. */
const ALIKE = 1e-6;

export async function cutBars({ pieces, stock, kerf, endTrim, seconds = SECONDS }: BarProblem): Promise<Cuts> {
  const types = gathered(pieces, ({ length }) => `${Math.round(length / ALIKE)}`);
  const lengths = types.map(([first]) => first!.length);
  const money = stock.every(({ buy, price }) => !buy || price !== undefined);
  const supplies = stock.map((bar): Supply => {
    const room = bar.length - 2 * endTrim + kerf;
    const filling: Stock = { room, takes: lengths.map((l) => l + kerf), ends: lengths.map(() => 0), alone: [] };
    return {
      stock: filling,
      shelf: bar.count,
      buy: bar.buy,
      cost: money ? (bar.price ?? 0) : bar.length,
      size: bar.length,
    };
  });
  const answer = await share(
    types.map((t) => t.length),
    supplies,
    seconds,
  );
  const queues = types.map((alike) => [...alike]);
  const take = (type: number): CutPiece => queues[type]!.shift()!;
  const used = numbered(answer.bins, stock).map(({ bin, number }) => laid(bin, number, stock, kerf, endTrim, take));
  return {
    used,
    over: queues.flat().map(({ id }) => id),
    least: answer.of === 'shelf' ? 'length taken from the shelf' : money ? 'money' : 'length bought',
    value: answer.value,
    bound: answer.bound,
    proved: answer.proved,
  };
}

/** The shelf first, fuller ones first within a kind, each with its number among those of its id. */
export function numbered(bins: readonly Bin[], stock: readonly { readonly id: string }[]) {
  const many = (bin: Bin) => bin.counts.reduce((sum, [, n]) => sum + n, 0);
  const sorted = [...bins].sort(
    (a, b) => (a.source === b.source ? 0 : a.source === 'shelf' ? -1 : 1) || a.supply - b.supply || many(b) - many(a),
  );
  const counted = new Map<string, number>();
  return sorted.map((bin) => {
    const { id } = stock[bin.supply]!;
    counted.set(id, (counted.get(id) ?? 0) + 1);
    return { bin, number: counted.get(id)! };
  });
}

function laid(
  { supply, source, counts }: Bin,
  number: number,
  stock: readonly BarStock[],
  kerf: number,
  endTrim: number,
  take: (type: number) => CutPiece,
): PlacedStock {
  const bar = stock[supply]!;
  const pieces = counts.flatMap(([type, n]) => Array.from({ length: n }, () => take(type)));
  pieces.sort((a, b) => b.length - a.length);
  let at = endTrim;
  const cuts = pieces.map(({ id, length }): StockCut => {
    const cut = { piece: id, from: at, to: at + length };
    at = cut.to + kerf;
    return cut;
  });
  return { stock: bar.id, kind: 'bar', number, source, cuts, left: Math.max(0, bar.length - at) };
}
