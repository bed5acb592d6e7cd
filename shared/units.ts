/**
 * Numbers as people read and type them. The document and the reports speak mm and degrees; the kernel works in mm and
 * radians; inches exist on screen and paper only. Where a typed text becomes mm, the type says so.
 */
import type { Display } from './design/types';

export { type LengthAnswer, type NumberAnswer, parseLength, parseNumber } from './parseLength';

declare const unit: unique symbol;
export type Mm = number & { readonly [unit]: 'mm' };

/** Exact, since 1959. */
export const MM_PER_INCH = 25.4;

/** A hundredth of a millimetre is finer than a tube can be cut; a thousandth of an inch is the shop's habit. */
const DIGITS: Readonly<Record<Display, number>> = { mm: 2, in: 3 };

/** Number and unit apart, so that a page can set the unit lighter. Point as the decimal mark, whatever the locale. */
export function lengthParts(
  value: number,
  display: Display,
  digits = DIGITS[display],
): { number: string; unit: string } {
  return { number: fixed(display === 'in' ? value / MM_PER_INCH : value, digits), unit: display };
}

/** @param value mm, whatever the display. `formatLength(42.4, 'in')` is `1.669 in` */
export function formatLength(value: number, display: Display, digits = DIGITS[display]): string {
  const { number, unit } = lengthParts(value, display, digits);
  return `${number} ${unit}`;
}

/** @param value degrees. `formatAngle(22.5)` is `22.5°` */
export const formatAngle = (value: number, digits = 1): string => `${fixed(value, digits)}°`;

/** Like toFixed, but nothing is ever "-0.0". */
function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
