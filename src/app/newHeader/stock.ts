/** Tube sizes that can be bought, to choose from and to round a formula's bore to. mm, whatever the unit shown. */
import type { Display } from '../../../shared/design/types';
import { INCH_OUTSIDE_DIAMETERS, METRIC_OUTSIDE_DIAMETERS } from '../../../shared/stock/tubes';
import { MM_PER_INCH } from '../../../shared/units';

export const stockDiameters = (display: Display): readonly number[] =>
  display === 'in' ? INCH_OUTSIDE_DIAMETERS.map((d) => d * MM_PER_INCH) : METRIC_OUTSIDE_DIAMETERS;

/** The outside diameter whose bore comes nearest; past the largest, the diameter itself to the millimetre. */
export function nearestStock(bore: number, wall: number, display: Display): number {
  const wanted = bore + 2 * wall;
  const stock = stockDiameters(display);
  if (wanted > stock.at(-1)! + STEP) return Math.round(wanted);
  return stock.reduce((best, d) => (Math.abs(d - wanted) < Math.abs(best - wanted) ? d : best));
}

/** About what lies between the largest stock sizes. */
const STEP = 6;
