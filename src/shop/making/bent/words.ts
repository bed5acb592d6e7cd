/** Lengths and angles in a sentence, as the cutting plan says them. */
import type { Display } from '../../../../shared/design/types';
import { figure, sayIn as sayAllIn } from '../../nest/words';

export type Say = (mm: number) => string;

export const sayIn = (display: Display = 'mm'): Say => sayAllIn(display).length;

export const degrees = (angle: number): string => `${figure(angle)}°`;
