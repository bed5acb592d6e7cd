/** How strongly an element is drawn, from what is hovered and picked: whichever bend or straight of it is meant. */
import { sameRef } from '../sameRef';
import type { Pointed, Ref } from '../session';

export type Emphasis = 'none' | 'hovered' | 'selected';

export const sameElement = (a: Ref | null, b: Ref | null): boolean =>
  a !== null && b !== null && (a.kind === 'fastener' ? sameRef(a, b) : a.kind === b.kind && a.id === b.id);

export const isPicked = (own: Ref, selection: readonly Ref[]): boolean => selection.some((s) => sameElement(s, own));

export function emphasisOf(own: Ref, selection: readonly Ref[], hovered: Pointed | null): Emphasis {
  if (isPicked(own, selection)) return 'selected';
  return sameElement(hovered, own) || sameElement(hovered?.beside ?? null, own) ? 'hovered' : 'none';
}
