/**
 * A number in a field: from what is typed to the document's value and back. Lengths are typed and shown in the display
 * unit and kept in mm; angles in degrees; the rest are plain. No React.
 */
import { isWithin, type Range } from '../../../../shared/design/ranges';
import type { Display } from '../../../../shared/design/types';
import { MM_PER_INCH, parseLength, parseNumber } from '../../../../shared/units';

/** `count` is a whole number, `plain` any other without a unit of its own. */
export type Quantity = 'length' | 'angle' | 'count' | 'plain';

export type Reading = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly problem: string };

/** As fine as anything is set on a bench; a field left as it was keeps every digit of its value. */
const DECIMALS = { mm: 3, in: 4, angle: 3, plain: 6 } as const;

/**
 * The text to edit: no trailing zeros, a real minus (typed ones are understood alike), no unit: it
 * stands beside the field.
 * @param digits decimals kept whatever they are, for a column
 */
export function showQuantity(value: number, quantity: Quantity, display: Display, digits?: number): string {
  const inUnit = quantity === 'length' && display === 'in' ? value / MM_PER_INCH : value;
  const decimals = quantity === 'length' ? DECIMALS[display] : quantity === 'angle' ? DECIMALS.angle : DECIMALS.plain;
  const text = digits === undefined ? trimmed(inUnit.toFixed(decimals)) : fixed(inUnit, digits);
  return text.replace('-', '−');
}

/** In a column, where points stand under one another. */
const fixed = (value: number, digits: number): string => {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
};

const trimmed = (text: string): string => {
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
};

/** What was typed, as the document's value, refused in words where it cannot be. @param range none: any number */
export function readQuantity(text: string, quantity: Quantity, display: Display, range?: Range): Reading {
  const answer = quantity === 'length' ? parseLength(text, display) : parseNumber(text);
  if (!answer.ok) return answer;
  const value = 'mm' in answer ? answer.mm : answer.value;
  if (quantity === 'count' && !Number.isInteger(value)) {
    return { ok: false, problem: `${trimmed(value.toFixed(DECIMALS.plain))} is not a whole number.` };
  }
  if (!range || isWithin(value, range)) return { ok: true, value };
  const said = sayQuantity(value, quantity, display);
  return { ok: false, problem: `${said} is out of range: ${rangeWords(range, quantity, display)}.` };
}

/** A value with its unit, as a sentence would have it. */
export function sayQuantity(value: number, quantity: Quantity, display: Display): string {
  const text = showQuantity(value, quantity, display);
  return text + (quantity === 'length' ? ` ${display}` : quantity === 'angle' ? '°' : '');
}

/** Past these a limit guards the program rather than the work, and saying it would be noise: ten metres, a million. */
const TELLING = { length: 10_000, angle: 1e6, count: 1e6, plain: 1e6 } as const;

/** `above 0, less than 21.2 mm`, `1 to 16`; empty where nothing narrower than the document's outermost limit holds. */
export function rangeWords({ least, most, above, below }: Range, quantity: Quantity, display: Display): string {
  const say = (value: number) => sayQuantity(value, quantity, display);
  const low = least > -TELLING[quantity];
  const high = most < TELLING[quantity];
  if (low && high) {
    if (!above && !below) return `${showQuantity(least, quantity, display)} to ${say(most)}`;
    return `${above ? 'above' : 'from'} ${say(least)}, ${below ? 'less than' : 'at most'} ${say(most)}`;
  }
  if (low) return above ? `above ${say(least)}` : `${say(least)} or more`;
  if (high) return below ? `less than ${say(most)}` : `at most ${say(most)}`;
  return sayFarthest(least, most, quantity, display);
}

function sayFarthest(least: number, most: number, quantity: Quantity, display: Display): string {
  return `from ${sayQuantity(least, quantity, display)} to ${sayQuantity(most, quantity, display)}`;
}

/** What an arrow key moves by: 1 mm or 1/16 in, 1°, 1. */
const STEP = { length: { mm: 1, in: MM_PER_INCH / 16 }, angle: 1, count: 1, plain: 1 } as const;

export type StepSize = 'coarse' | 'usual' | 'fine';
const TIMES = { coarse: 10, usual: 1, fine: 0.1 } as const;

/** One step up or down, stopping short of the range's ends. @param step in the document's unit; default as above */
export function stepQuantity(
  value: number,
  direction: 1 | -1,
  size: StepSize,
  quantity: Quantity,
  display: Display,
  range?: Range,
  step: number = quantity === 'length' ? STEP.length[display] : STEP[quantity],
): number {
  const whole = quantity === 'count' || range?.whole;
  const by = step * (whole && size === 'fine' ? 1 : TIMES[size]);
  // Sums of tenths drift in the last digits; a billionth is far below what any field shows.
  const next = Math.round((value + direction * by) * 1e9) / 1e9;
  if (!range || isWithin(next, range)) return next;
  if (next <= range.least) return range.above ? value : range.least;
  return range.below ? value : range.most;
}
