/** How strongly an element is drawn, from what is hovered and selected: whichever bend or straight of it is meant. */
import type { Ref } from '../session';

export type Emphasis = 'none' | 'hovered' | 'selected';

export const sameElement = (a: Ref | null, b: Ref | null): boolean =>
  a !== null && b !== null && a.kind === b.kind && a.id === b.id;

export function emphasisOf(own: Ref, selected: Ref | null, hovered: Ref | null): Emphasis {
  if (sameElement(selected, own)) return 'selected';
  return sameElement(hovered, own) ? 'hovered' : 'none';
}
