/** Lengths in the design's display unit, without the unit: a table's head has it once. Never "-0.000". */
import type { Display } from '../../../shared/design/types';
import { lengthParts } from '../../../shared/units';

export type Measures = {
  readonly unit: Display;
  /** To a thousandth of a millimetre, or as fine in inches. */
  length(mm: number): string;
  /** The same with its sign: how far something is off. */
  signed(mm: number): string;
  /** To a hundredth of a millimetre: what clearances are measured to. */
  gap(mm: number): string;
};

export function measuresIn(display: Display = 'mm'): Measures {
  const inches = display === 'in';
  const length = (mm: number) => lengthParts(mm, display, inches ? 4 : 3).number;
  return {
    unit: display,
    length,
    signed: (mm) => (length(mm).startsWith('-') ? length(mm) : `+${length(mm)}`),
    gap: (mm) => lengthParts(mm, display, inches ? 3 : 2).number,
  };
}
