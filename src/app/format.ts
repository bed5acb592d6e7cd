/** Numbers as the tables show them: always a point, fixed decimals, a real minus sign. Lengths come in as mm. */
import type { Display } from '../../shared/design/types';

const MM_PER_INCH = 25.4;

/** A thousandth of an inch is 0.025 mm: one decimal more says about as much. */
export const decimalsFor = (display: Display, mmDecimals: number): number =>
  display === 'in' ? mmDecimals + 1 : mmDecimals;

export function formatLength(mm: number, display: Display, mmDecimals = 2): string {
  return fixed(display === 'in' ? mm / MM_PER_INCH : mm, decimalsFor(display, mmDecimals));
}

/** With its sign, also plus. */
export function formatSigned(mm: number, display: Display, mmDecimals = 2): string {
  const text = formatLength(mm, display, mmDecimals);
  return text.startsWith('−') || Number(text) === 0 ? text : `+${text}`;
}

export const formatAngle = (degrees: number, decimals = 1): string => fixed(degrees, decimals);

/** Never "−0.00". */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
