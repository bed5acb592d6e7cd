/**
 * The resolved header of a design, kept for as long as the design is: every ask of a gesture starts from the same design.
 * Designs are immutable, so what is kept is what would be worked out anew.
 */
import type { Design } from '../../shared/design/types';
import { type Header, resolveHeader } from '../header/resolve';

const kept = new WeakMap<Design, Header>();

/** @param near a design that shares parts with this one and is kept already: what follows from those is not worked out again */
export function headerKept(design: Design, near?: Design): Header {
  let header = kept.get(design);
  if (!header) {
    header = resolveHeader(design, near && headerKept(near));
    kept.set(design, header);
  }
  return header;
}
