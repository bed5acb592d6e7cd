/** Hover and selection for one part of the design, the same wherever it is shown: pointer, focus and keyboard. */
import type { KeyboardEvent, MouseEvent } from 'react';
import { lights, sameRef } from '../refs';
import { type Ref, useSession } from '../session';

export type Lit = { readonly hovered: boolean; readonly selected: boolean };

/** Whether `ref` is pointed at, itself or as part of its runner. */
export const useLit = (ref: Ref): Lit => {
  const hovered = useSession((s) => lights(s.hovered, ref));
  const selected = useSession((s) => s.selection.some((picked) => lights(picked, ref)));
  return { hovered, selected };
};

/** The same for the thing itself only: where its runner is named beside it, lighting every row would say nothing. */
export const useLitItself = (ref: Ref): Lit => {
  const hovered = useSession((s) => sameRef(s.hovered, ref));
  const selected = useSession((s) => s.selection.some((picked) => sameRef(picked, ref)));
  return { hovered, selected };
};

/** Held with a click, these add to what is picked, or take out of it. */
const adds = (event: MouseEvent | KeyboardEvent): boolean => event.shiftKey || event.ctrlKey || event.metaKey;

/** Handlers to spread on whatever shows `ref`. A second click lets go. */
export function pointing(ref: Ref) {
  const { hover, select } = useSession.getState();
  const pick = (adds: boolean) => {
    const { selection, toggle } = useSession.getState();
    if (adds) toggle(ref);
    else select(selection.length === 1 && sameRef(selection[0]!, ref) ? null : ref);
  };
  return {
    onPointerEnter: () => hover(ref),
    onPointerLeave: () => hover(null),
    onFocus: () => hover(ref),
    onBlur: () => hover(null),
    onClick: (event: MouseEvent) => {
      event.stopPropagation();
      pick(adds(event));
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      event.stopPropagation();
      pick(adds(event));
    },
  };
}

export const litClass = ({ hovered, selected }: Lit): string =>
  `${hovered ? ' hovered' : ''}${selected ? ' selected' : ''}`;
