/**
 * Numbers as a builder reads them off a tape and a dial: rounded to their steps, inches as fractions. mm and degrees in, words out,
 * the unit left to the heading over them.
 */
import type { Display } from '../../../shared/design/types';
import { formatLength, lengthParts, MM_PER_INCH } from '../../../shared/units';
import { toStep } from '../toStep';

export type Steps = {
  readonly display: Display;
  /** mm */
  readonly tape: number;
  /** Degrees. */
  readonly dial: number;
};

/** Halvings of an inch that tapes and rules are marked with. */
const FINEST = 64;
/** A step in mm that is meant as one in inches is written down rounded. */
const SLACK = 1.05;

/** The largest fraction of an inch that is no coarser than the tape's step; null where no tape shows it. */
export function fractionOf(tape: number): number | null {
  for (let parts = 8; parts <= FINEST; parts *= 2) if (MM_PER_INCH / parts <= tape * SLACK) return parts;
  return null;
}

const minus = (words: string): string => words.replace('-', '−');

/** `412.5`; `16 15/64` */
export function tapeFigure(mm: number, { display, tape }: Pick<Steps, 'display' | 'tape'>): string {
  const parts = display === 'in' ? fractionOf(tape) : null;
  if (parts) return inchFraction(mm, parts);
  if (display === 'in') return minus(lengthParts(mm, 'in').number);
  return minus(stepped(mm, tape));
}

export function inchFraction(mm: number, parts: number): string {
  const count = Math.round((Math.abs(mm) / MM_PER_INCH) * parts);
  const whole = Math.floor(count / parts);
  let [over, under] = [count % parts, parts];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const sign = mm < 0 && count > 0 ? '−' : '';
  if (over === 0) return `${sign}${whole}`;
  return `${sign}${whole > 0 ? `${whole} ` : ''}${over}/${under}`;
}

/** What a length comes to be rounded to as `tapeFigure` says it: the tape's step or, in inches, a fraction or a thousandth. mm */
export const tapeStep = ({ display, tape }: Pick<Steps, 'display' | 'tape'>): number =>
  display === 'in' ? MM_PER_INCH / (fractionOf(tape) ?? 1000) : tape;

/** Without its sign, `34.5`; with it, `34.5°`. */
export const dialNumber = (degrees: number, { dial }: Pick<Steps, 'dial'>): string => minus(stepped(degrees, dial));
export const dialFigure = (degrees: number, steps: Pick<Steps, 'dial'>): string => `${dialNumber(degrees, steps)}°`;

/** As designed: not for the tape. */
export const lengthFigure = (mm: number, display: Display): string => minus(lengthParts(mm, display).number);
export const angleFigure = (degrees: number): string => `${minus(fixed(degrees, 2))}°`;

/** Round the tube, marked by a strip of paper: 0.1 mm, 0.01 in. */
export const aroundFigure = (mm: number, display: Display): string =>
  minus(lengthParts(mm, display, display === 'in' ? 2 : 1).number);

/** What `aroundFigure` is rounded to. */
export const aroundStep = (display: Display): string => (display === 'in' ? '0.01 in' : '0.1 mm');

/** `0.5 mm and 0.5°`; `1/64 in and 0.5°` */
export function stepWords({ display, tape, dial }: Steps): string {
  const parts = display === 'in' ? fractionOf(tape) : null;
  const length = parts ? `1/${parts} in` : display === 'in' ? formatLength(0.0254, 'in') : `${trimmed(tape)} mm`;
  return `${length} and ${trimmed(dial)}°`;
}

function stepped(value: number, step: number): string {
  return fixed(toStep(value, step), step > 0 ? digitsOf(step) : 2);
}

/** As many as the step itself has, two at most. */
const digitsOf = (step: number): number =>
  [0, 1].find((digits) => Math.abs(step - Number(step.toFixed(digits))) < 1e-9) ?? 2;

const trimmed = (value: number): string => String(Number(value.toFixed(3)));

function fixed(value: number, digits: number): string {
  const words = value.toFixed(digits);
  return Number(words) === 0 ? words.replace('-', '') : words;
}
