/** Millimetres or inches: part of the document, because a design belongs to a shop that speaks one of them. */
import { createContext, useContext } from 'react';
import type { Display } from '../../../shared/design/types';
import { documents, useDocument } from '../document';

export function setDisplay(display: Display): void {
  const { settled } = documents.store.getState();
  if (settled && (settled.display ?? 'mm') !== display)
    documents.apply({ ...settled, display }, display === 'mm' ? 'Show millimetres' : 'Show inches');
}

/** For a part of the page that speaks of another design than the open one; null: the open one's unit. */
export const DisplayOf = createContext<Display | null>(null);

export function useDisplay(): Display {
  const open = useDocument((s) => s.design?.display ?? 'mm');
  return useContext(DisplayOf) ?? open;
}
