/** Lengths, angles and lists in a sentence. */
import type { Display } from '../../../../shared/design/types';
import { MM_PER_INCH } from '../../../../shared/units';

export type Say = (mm: number) => string;

export const sayIn = (display: Display = 'mm'): Say =>
  display === 'in' ? (mm) => `${short(mm / MM_PER_INCH, 3)} in` : (mm) => `${short(mm, 2)} mm`;

export const degrees = (angle: number): string => `${short(angle, 2)}°`;

/** "1", "1 and 2", "1, 2 and 3" */
export const list = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

const short = (value: number, digits: number): string => String(Number(value.toFixed(digits)) + 0);
