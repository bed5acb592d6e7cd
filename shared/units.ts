/**
 * Units as types, and numbers as people read them. The document and the reports speak mm and degrees; the kernel works in
 * mm and radians; inches exist on screen and paper only. Conversion happens here, at the edges, by name.
 */
import type { Display } from './design/types';

export { type LengthAnswer, type NumberAnswer, parseLength, parseNumber } from './parseLength';

declare const unit: unique symbol;
type Of<Name extends string> = number & { readonly [unit]: Name };

export type Mm = Of<'mm'>;
export type Inches = Of<'in'>;
export type Degrees = Of<'degrees'>;
export type Radians = Of<'radians'>;

/** Exact, since 1959. */
export const MM_PER_INCH = 25.4;

/** Says what a bare number is; the number stays as it is. */
export const mm = (value: number): Mm => value as Mm;
export const degrees = (value: number): Degrees => value as Degrees;
export const radians = (value: number): Radians => value as Radians;
export const inches = (value: number): Inches => value as Inches;

export const toInches = (value: Mm): Inches => inches(value / MM_PER_INCH);
export const fromInches = (value: Inches): Mm => mm(value * MM_PER_INCH);
export const toDegrees = (value: Radians): Degrees => degrees((value * 180) / Math.PI);
export const toRadians = (value: Degrees): Radians => radians((value * Math.PI) / 180);

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
