/** Millimetres or inches: part of the document, because a design belongs to a shop that speaks one of them. */
import type { Display } from '../../../shared/design/types';
import { documents, useDocument } from '../document';

export function setDisplay(display: Display): void {
  const { settled } = documents.store.getState();
  if (settled && (settled.display ?? 'mm') !== display)
    documents.apply({ ...settled, display }, display === 'mm' ? 'Show millimetres' : 'Show inches');
}

export const useDisplay = (): Display => useDocument((s) => s.design?.display ?? 'mm');
