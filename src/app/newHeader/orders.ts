/** Firing orders as people type them, `1-3-4-2` or `1 3 4 2`, and the common ones to offer. */
import { USUAL_ENGINES } from '../../../shared/engine/usualEngines';

/** Others in use beside the usual ones. The four's and the eight's: tests/reference (fire.I4_alt, fire.V8_b). */
const OTHERS: readonly (readonly number[])[] = [
  [1, 2, 4, 3],
  [1, 5, 4, 2, 6, 3, 7, 8],
];

export const ordersFor = (cylinders: number): readonly (readonly number[])[] =>
  [...USUAL_ENGINES.map((e) => e.firingOrder), ...OTHERS].filter((order) => order.length === cylinders);

/** Numbers with anything between them; what is no number becomes NaN, which names no cylinder. */
export const readOrder = (text: string): number[] =>
  text
    .split(/[\s,;–-]+/)
    .filter((part) => part !== '')
    .map(Number);

/** Why it is no firing order, or null. */
export function orderProblem(order: readonly number[], cylinders: number): string | null {
  const strange = order.find((n) => !Number.isInteger(n) || n < 1 || n > cylinders);
  if (strange !== undefined)
    return Number.isNaN(strange) ? 'Numbers only, such as 1-3-4-2.' : `There is no cylinder ${strange}.`;
  const twice = order.find((n, i) => order.indexOf(n) < i);
  if (twice !== undefined) return `Cylinder ${twice} is there twice.`;
  const missing = Array.from({ length: cylinders }, (_, i) => i + 1).filter((n) => !order.includes(n));
  return missing.length === 0 ? null : `Cylinder ${missing.join(', ')} is missing.`;
}
