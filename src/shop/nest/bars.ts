/**
 * Straight pieces out of bars. On one bar n pieces take their lengths and n − 1 cuts, or n where something is left: with room for
 * the bar's length and one kerf, each piece takes its length and one. The end trim comes off both ends of every length, from the
 * shelf too, as nobody knows how those were sawn; the cuts that take it off lie within it. mm.
 */
import type { PlacedStock, StockCut } from '../making/report';
import { type Cuts, cutAll, SECONDS } from './cutAll';
import type { Stock } from './fill';
import { gathered } from './gathered';
import type { Bin, Supply } from './share';

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
  return cutAll(types, supplies, stock, seconds, {
    least: { shelf: 'length taken from the shelf', bought: money ? 'money' : 'length bought' },
    laid: (bin, number, pieces) => laid(bin, number, stock, kerf, endTrim, pieces),
  });
}

function laid(
  { supply, source }: Bin,
  number: number,
  stock: readonly BarStock[],
  kerf: number,
  endTrim: number,
  pieces: CutPiece[],
): PlacedStock {
  const bar = stock[supply]!;
  pieces.sort((a, b) => b.length - a.length);
  let at = endTrim;
  const cuts = pieces.map(({ id, length }): StockCut => {
    const cut = { piece: id, from: at, to: at + length };
    at = cut.to + kerf;
    return cut;
  });
  return { stock: bar.id, kind: 'bar', number, source, cuts, left: Math.max(0, bar.length - at) };
}
