/** Numbers as the screen shows them: fixed decimals, a real minus sign. Lengths come in as mm. */
import type { Display } from '../../shared/design/types';
import { lengthParts, MM_PER_INCH } from '../../shared/units';

/** A thousandth of an inch is 0.025 mm: one decimal more says about as much. */
export const decimalsFor = (display: Display, mmDecimals: number): number =>
  display === 'in' ? mmDecimals + 1 : mmDecimals;

/** The number alone; its unit is set lighter or stands in the column's head. */
export function lengthNumber(mm: number, display: Display, mmDecimals = 2): string {
  return typeset(lengthParts(mm, display, decimalsFor(display, mmDecimals)).number);
}

/** With its sign, also plus. */
export function signedNumber(mm: number, display: Display, mmDecimals = 2): string {
  const text = lengthNumber(mm, display, mmDecimals);
  return text.startsWith('−') || Number(text) === 0 ? text : `+${text}`;
}

export function angleNumber(degrees: number, decimals = 1): string {
  const text = degrees.toFixed(decimals);
  return typeset(Number(text) === 0 ? text.replace('-', '') : text);
}

/** An area of mm² as the display has it; its unit is the display's, squared. */
export function areaNumber(mm2: number, display: Display): string {
  return display === 'in' ? (mm2 / MM_PER_INCH ** 2).toFixed(3) : mm2.toFixed(0);
}

const typeset = (text: string): string => text.replace('-', '−');

/** The time of day of an instant (ms, epoch), as clocks show it here. */
export const clock = (at: number): string =>
  new Date(at).toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' });
