/** Numbers as a tape or a dial reads them, and as they are said: mm with as many decimals as the tape has, or inches in fractions. */
import type { Display } from '../../../shared/design/types';
import { MM_PER_INCH } from '../../../shared/units';

/** To the nearest of its least steps; nothing is −0. */
export function toStep(value: number, step: number): number {
  // Steps such as 0.1 are no whole numbers of anything: the last digits of the product are noise.
  const rounded = Number((Math.round(value / step) * step).toFixed(9));
  return rounded === 0 ? 0 : rounded;
}

/** Decimals that a step needs, at most three: 0.5 → 1. */
export function decimalsOf(step: number): number {
  for (let n = 0; n < 3; n++) if (Math.abs(step * 10 ** n - Math.round(step * 10 ** n)) < 1e-6) return n;
  return 3;
}

/** Inch rules have sixty-fourths at the finest. */
const FINEST = 64;

/** @param value mm, rounded to `tape`. `{ number: '43.5', unit: 'mm' }`, `{ number: '1 23/32', unit: 'in' }` */
export function readLength(value: number, tape: number, display: Display): { number: string; unit: Display } {
  if (display === 'mm') return { number: real(value.toFixed(decimalsOf(tape))), unit: 'mm' };
  const steps = (tape / MM_PER_INCH) * FINEST;
  const inches = value / MM_PER_INCH;
  const isInchTape = steps > 1 - 1e-6 && Math.abs(steps - Math.round(steps)) < 1e-6;
  // A tape of millimetres: no finer than it is.
  if (!isInchTape)
    return {
      number: real(inches.toFixed(Math.min(4, Math.max(0, Math.ceil(-Math.log10(tape / MM_PER_INCH)))))),
      unit: 'in',
    };
  return { number: fraction(Math.round(inches * FINEST)), unit: 'in' };
}

export const readAngle = (value: number, dial: number): string => real(value.toFixed(decimalsOf(dial)));

const real = (text: string): string => (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');

function fraction(parts: number): string {
  const sign = parts < 0 ? '−' : '';
  const all = Math.abs(parts);
  let [top, bottom] = [all % FINEST, FINEST];
  while (top !== 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(all / FINEST);
  if (top === 0) return `${sign}${whole}`;
  return `${sign}${whole === 0 ? '' : `${whole} `}${top}/${bottom}`;
}
