/** Hover and selection for one part of the design, the same wherever it is shown: pointer, focus and keyboard. */
import type { KeyboardEvent, MouseEvent } from 'react';
import { lights, sameRef } from '../refs';
import { type Ref, useSession } from '../session';

export type Lit = { readonly hovered: boolean; readonly selected: boolean };

/** Whether `ref` is pointed at, itself or as part of its runner. */
export const useLit = (ref: Ref): Lit => {
  const hovered = useSession((s) => lights(s.hovered, ref));
  const selected = useSession((s) => lights(s.selected, ref));
  return { hovered, selected };
};

/** The same for the thing itself only: where its runner is named beside it, lighting every row would say nothing. */
export const useLitItself = (ref: Ref): Lit => {
  const hovered = useSession((s) => sameRef(s.hovered, ref));
  const selected = useSession((s) => sameRef(s.selected, ref));
  return { hovered, selected };
};

/** Handlers to spread on whatever shows `ref`. A second click lets go. */
export function pointing(ref: Ref) {
  const { hover, select } = useSession.getState();
  const toggle = () => select(sameRef(useSession.getState().selected, ref) ? null : ref);
  return {
    onPointerEnter: () => hover(ref),
    onPointerLeave: () => hover(null),
    onFocus: () => hover(ref),
    onBlur: () => hover(null),
    onClick: (event: MouseEvent) => {
      event.stopPropagation();
      toggle();
    },
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      event.stopPropagation();
      toggle();
    },
  };
}

export const litClass = ({ hovered, selected }: Lit): string =>
  `${hovered ? ' hovered' : ''}${selected ? ' selected' : ''}`;
