/**
 * Sizes that round exhaust tube is sold in, and the mass of a metre. mm unless named otherwise. For offering sizes and for
 * saying "not a stock size": any size may be designed.
 */
import type { Tube } from '../design/types';

/** Source: a mandrel-bend stockist's size matrix (common practice). Inches. */
export const INCH_OUTSIDE_DIAMETERS: readonly number[] = [
  1.5, 1.625, 1.75, 1.875, 2, 2.125, 2.25, 2.375, 2.5, 2.625, 2.75, 3, 3.5,
];

/** Source: from memory; 33.7, 42.4, 48.3, 60.3 and 76.1 are series 1 of ISO 1127 and ISO 4200, 88.9 too. */
export const METRIC_OUTSIDE_DIAMETERS: readonly number[] = [
  33.7, 38, 42.4, 44.5, 48.3, 50.8, 54, 60.3, 63.5, 76.1, 88.9,
];

/** Source: from memory. */
export const METRIC_WALLS: readonly number[] = [1, 1.2, 1.5, 1.6, 2, 2.6];

/**
 * Birmingham (Stubs iron) wire gauge: wall in inches. Source: three published tables that agree. Not the sheet-steel gauge,
 * in which 16 is 0.0598 in.
 */
export const BWG_WALLS: Readonly<Record<number, number>> = {
  10: 0.134,
  11: 0.12,
  12: 0.109,
  13: 0.095,
  14: 0.083,
  15: 0.072,
  16: 0.065,
  17: 0.058,
  18: 0.049,
  19: 0.042,
  20: 0.035,
  21: 0.032,
  22: 0.028,
};

/** Area of the ring of metal between outside and bore, mm². */
export const wallArea = ({ outsideDiameter, wall }: Pick<Tube, 'outsideDiameter' | 'wall'>): number =>
  Math.PI * wall * (outsideDiameter - wall);

const KG_PER_M3_IN_MM3 = 1e-9;

/** Mass of a tube, kg: wall area × length × density. @param length mm. @param density kg/m³ */
export const tubeMass = (tube: Pick<Tube, 'outsideDiameter' | 'wall'>, length: number, density: number): number =>
  wallArea(tube) * length * density * KG_PER_M3_IN_MM3;
