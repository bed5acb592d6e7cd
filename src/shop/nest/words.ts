/** Numbers and tubes as remarks and lists say them, in the unit a design is shown in, with no more decimals than are there. */
import { DEFAULT_MATERIAL } from '../../../geometry/index';
import type { Display, Tube } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';

export const figure = (value: number, digits = 2): string => String(Number(value.toFixed(digits)));

/** How lengths are said: mm to a hundredth, inches to a thousandth; walls a digit finer. */
export type Say = {
  readonly unit: Display;
  /** Without its unit, and with. @param value mm */
  bare(value: number): string;
  length(value: number): string;
  /** A length that would do: rounded up, never down. */
  atLeast(value: number): string;
  tube(tube: Tube): string;
};

const DIGITS = { mm: 2, in: 3 } as const;
const EPSILON = 1e-6;

export function sayIn(unit: Display = 'mm'): Say {
  const digits = DIGITS[unit];
  const inUnit = (value: number): number => Number(lengthParts(value, unit, 12).number);
  const bare = (value: number, finer = 0): string => figure(inUnit(value), digits + finer);
  const length = (value: number): string => `${bare(value)} ${unit}`;
  return {
    unit,
    bare,
    length,
    atLeast: (value) => `${figure(Math.ceil(inUnit(value) * 10 ** digits - EPSILON) / 10 ** digits, digits)} ${unit}`,
    tube: ({ outsideDiameter, wall, material = DEFAULT_MATERIAL }) =>
      `${bare(outsideDiameter)} × ${bare(wall, 1)} ${unit} ${material.replaceAll('-', ' ')}`,
  };
}

/** `r1-2, r1-3 and 4 more`. */
export function named(ids: readonly string[], most = 5): string {
  if (ids.length <= most) return ids.join(', ');
  return `${ids.slice(0, most).join(', ')} and ${ids.length - most} more`;
}
