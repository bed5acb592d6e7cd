/** A bar or bend of stock along its middle line, legs and all, and where its pieces lie on it. mm from its first end. */
import type { StockBar, StockBend } from '../../shared/design/types';
import { arcLength } from './arcs';
import type { StockCut, UsedStock } from './making/report';

export const isBend = (stock: StockBar | StockBend): stock is StockBend => 'radius' in stock;

export const stockLength = (of: StockBar | StockBend): number =>
  isBend(of) ? of.legs[0] + arcLength(of) + of.legs[1] : of.length;

/** From where to where it is bent; null of a bar. */
export const bentFrom = (of: StockBar | StockBend): readonly [from: number, to: number] | null =>
  isBend(of) ? [of.legs[0], of.legs[0] + arcLength(of)] : null;

export type Place = { readonly piece: string; readonly from: number; readonly to: number };

/** In the order that they lie in. */
export function placesOf({ of, cuts }: Pick<UsedStock, 'of' | 'cuts'>): Place[] {
  return cuts
    .map((cut): Place => {
      if (!isBend(of)) return { piece: cut.piece, from: cut.from, to: cut.to };
      const [first, second] = legsIn(cut);
      const at = (angle: number): number => of.legs[0] + arcLength({ angle, radius: of.radius });
      return { piece: cut.piece, from: at(cut.from) - first, to: at(cut.to) + second };
    })
    .sort((a, b) => a.from - b.from);
}

/** Of the stock's first and second leg. */
export const legsIn = ({ legs = [0, 0] }: StockCut): readonly [number, number] => legs;
