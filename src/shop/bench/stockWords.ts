/** Bars and bends as a shop asks for them, in the design's unit. */
import type { Display, StockBar, StockBend } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import { isBend } from '../stockLayout';
import { materialName } from './bench';

/** As catalogues print them: no more decimals than there are. */
export function round(mm: number, display: Display): string {
  const [number, unit] = formatLength(mm, display).split(' ');
  return `${Number(number)} ${unit}`;
}

const bare = (degrees: number): string => `${Number(degrees.toFixed(2))}°`;

/** `42.4 mm × 1.5 mm, Stainless 304` */
export const sectionWords = (stock: StockBar | StockBend, display: Display): string =>
  `${round(stock.outsideDiameter, display)} × ${round(stock.wall, display)}, ${materialName(stock.material)}`;

/** `Bend 180°, radius 63.5 mm, legs 100 and 100 mm, tube 42.4 × 1.5 mm, Stainless 304` */
export function stockWords(stock: StockBar | StockBend, display: Display): string {
  const tube = sectionWords(stock, display);
  if (!isBend(stock)) return `Straight tube ${round(stock.length, display)}, ${tube}`;
  const [a, b] = stock.legs;
  const legs =
    Math.abs(a - b) < 0.005 ? `legs ${round(a, display)}` : `legs ${round(a, display)} and ${round(b, display)}`;
  return `Bend ${bare(stock.angle)}, radius ${round(stock.radius, display)}, ${legs}, ${tube}`;
}
