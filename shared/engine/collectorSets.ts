/** Which cylinders usually end in one collector. Common practice. */
import type { Arrangement } from './form';

/** One collector a bank; a straight six's front and rear three apart, where none are joined first. */
export function collectorSets(banks: readonly (readonly number[])[], arrangement: Arrangement): (readonly number[])[] {
  const straightSix = banks.length === 1 && banks[0]!.length === 6 && arrangement === 'all-into-one';
  if (!straightSix) return [...banks];
  return [banks[0]!.slice(0, 3), banks[0]!.slice(3)];
}
