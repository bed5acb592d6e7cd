/**
 * What bars and bends have in common: kinds of pieces are shared out among stock, then each length gets its number and its own
 * pieces, in the order they came. Amounts in the caller's units: money, mm, degrees or how many.
 */
import type { PlacedStock } from '../making/report';
import { type Bin, type Supply, share } from './share';

export type Cuts = {
  readonly used: readonly PlacedStock[];
  /** Ids of pieces that there is no stock for. */
  readonly over: readonly string[];
  readonly least: string;
  readonly value: number;
  readonly bound: number;
  readonly proved: boolean;
};

/** A search is given up after this long where nothing else is asked. */
export const SECONDS = 20;

type Ways<Piece> = {
  /** What is made least, in words. */
  readonly least: { readonly shelf: string; readonly bought: string };
  /** Where the pieces lie on one length. */
  readonly laid: (bin: Bin, number: number, pieces: Piece[]) => PlacedStock;
};

/** @param types pieces alike, a list each */
export async function cutAll<Piece extends { readonly id: string }>(
  types: readonly (readonly Piece[])[],
  supplies: readonly Supply[],
  stock: readonly { readonly id: string }[],
  seconds: number,
  { least, laid }: Ways<Piece>,
): Promise<Cuts> {
  const answer = await share(
    types.map((t) => t.length),
    supplies,
    seconds,
  );
  const queues = types.map((alike) => [...alike]);
  const used = numbered(answer.bins, stock).map(({ bin, number }) =>
    laid(
      bin,
      number,
      bin.counts.flatMap(([type, n]) => queues[type]!.splice(0, n)),
    ),
  );
  return {
    used,
    over: queues.flat().map(({ id }) => id),
    least: least[answer.of],
    value: answer.value,
    bound: answer.bound,
    proved: answer.proved,
  };
}

/** The shelf first, fuller ones first within a kind, each with its number among those of its id. */
function numbered(bins: readonly Bin[], stock: readonly { readonly id: string }[]) {
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
