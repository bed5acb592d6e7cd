/** Pipes that come together: secondaries, the collector's outlet, its cone. Inside diameters and lengths, mm. */
import { MM_PER_INCH } from '../../units';
import { CUBIC_CENTIMETRE } from './gas';

/** Handbook: the first pipes of a 4-2-1. */
export const FIRST_PIPES = 15 * MM_PER_INCH;
/** A reader's notes on the older book: join not farther than this from the valve, then this much more. */
export const FARTHEST_JOIN = 18 * MM_PER_INCH;
export const AFTER_JOIN = 24 * MM_PER_INCH;

/** Handbook: what is left of the length P behind the first pipes. @param length P, mm */
export const restOfLength = (length: number): number => length - FIRST_PIPES;

/** The bore whose area is that of `count` pipes. */
export const equalAreaBore = (bore: number, count: number): number => Math.sqrt(count) * bore;

/** Handbook: 0.93 × √(2 × ID²), for pairs. */
export const stepBore = (bore: number, count: number): number => 0.93 * equalAreaBore(bore, count);

/** Where four join, practice goes from 1.6 to 1.9 of the primary's bore; as parts of equal area, 2.0. */
export const OUTLET_SHARES = { least: 1.6 / 2, most: 1.9 / 2 } as const;

/** Inches: 2 × √(2 cc / (25 × (P + 3))). @param cylinder mm³. @param length P, mm */
export function tailBore(cylinder: number, length: number): number {
  return 2 * Math.sqrt((2 * cylinder) / CUBIC_CENTIMETRE / (25 * (length / MM_PER_INCH + 3))) * MM_PER_INCH;
}

/** The circle that holds `count` equal tubes standing in a ring, by their outside diameter. */
export const enclosing = (outside: number, count: number): number =>
  count === 1 ? outside : outside * (1 + 1 / Math.sin(Math.PI / count));

/** @param fullAngle between the cone's opposite sides, degrees */
export function coneLength(wide: number, narrow: number, fullAngle: number): number {
  return (wide - narrow) / (2 * Math.tan((fullAngle * Math.PI) / 360));
}
