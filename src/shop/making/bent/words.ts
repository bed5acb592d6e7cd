/** Lengths and angles in a sentence. */
import type { Display } from '../../../../shared/design/types';
import { MM_PER_INCH } from '../../../../shared/units';

export type Say = (mm: number) => string;

export const sayIn = (display: Display = 'mm'): Say =>
  display === 'in' ? (mm) => `${short(mm / MM_PER_INCH, 3)} in` : (mm) => `${short(mm, 2)} mm`;

export const degrees = (angle: number): string => `${short(angle, 2)}°`;

const short = (value: number, digits: number): string => String(Number(value.toFixed(digits)) + 0);
