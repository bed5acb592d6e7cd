/**
 * Whether two designs would be written as the same bytes, without writing them: parts that are one and the same object,
 * which is most of them after an edit, are not looked into. Key order counts, and so does the sign of a zero.
 */
import type { Design } from '../../shared/design/types';

export const sameDesign = (a: Design, b: Design): boolean => same(a, b);

/** The same for any part of a design. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b))
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((entry, i) => same(entry, b[i]));
  const left = written(a);
  const right = written(b);
  return (
    left.length === right.length && left.every(([key, value], i) => key === right[i]![0] && same(value, right[i]![1]))
  );
}

/** Fields that are undefined are not written. */
const written = (of: object): [string, unknown][] => Object.entries(of).filter(([, value]) => value !== undefined);
