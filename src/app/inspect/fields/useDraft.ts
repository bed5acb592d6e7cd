/** A draft behind an input element: Enter and leaving apply, Escape restores, arrows step and apply after a rest. */
import { type FocusEvent, type KeyboardEvent, type MouseEvent, useEffect, useRef, useState } from 'react';
import { history } from '../../history';
import { settled, typed, UNTOUCHED } from './draft';
import type { StepSize } from './quantity';

type Options = {
  readonly shown: string;
  /** Takes the text; answers why not, or null. */
  readonly accept: (text: string) => string | null;
  /** The text one step on; null where the text cannot be stepped. */
  readonly step?: (text: string, direction: 1 | -1, size: StepSize) => string | null;
};

/** Arrow keys pressed in one go make one step of history: this long after the last one, ms. */
const REST = 600;

export function useDraft({ shown, accept, step }: Options) {
  const [draft, setDraft] = useState(UNTOUCHED);
  const rest = useRef<ReturnType<typeof setTimeout> | null>(null);
  const now = useRef({ draft, shown, accept });
  now.current = { draft, shown, accept };

  const still = () => {
    if (rest.current !== null) clearTimeout(rest.current);
    rest.current = null;
  };
  const put = (next: typeof draft) => {
    now.current.draft = next;
    setDraft(next);
  };
  const settle = () => {
    still();
    put(settled(now.current.draft, now.current.shown, now.current.accept));
  };
  useEffect(
    () => () => {
      if (rest.current !== null) clearTimeout(rest.current);
    },
    [],
  );

  return {
    problem: draft.problem,
    /** For an edit of the same value made beside the text: shows why it could not be, or clears the field. */
    refuse: (problem: string | null) => put({ text: null, problem }),
    input: {
      value: draft.text ?? shown,
      onChange: (event: { target: { value: string } }) => {
        still();
        put(typed(now.current.draft, event.target.value));
      },
      onFocus: (event: FocusEvent<HTMLInputElement>) => event.target.select(),
      // In a row that is picked by a click, a click into the field is for the field.
      onClick: (event: MouseEvent) => event.stopPropagation(),
      onBlur: settle,
      onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => {
        // Undo in a field that was not typed in means the last step, not the text.
        if (now.current.draft.text === null && (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z') {
          event.preventDefault();
          event.stopPropagation();
          if (event.shiftKey) history.redo();
          else history.undo();
          return;
        }
        // Rows have keys of their own; a field keeps what writing needs to itself. The page knows to leave it alone.
        if (!event.ctrlKey && !event.metaKey) event.stopPropagation();
        if (event.key === 'Enter') settle();
        else if (event.key === 'Escape') {
          still();
          put(UNTOUCHED);
        } else if (step && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
          const size = event.shiftKey ? 'coarse' : event.altKey ? 'fine' : 'usual';
          const text = step(now.current.draft.text ?? shown, event.key === 'ArrowUp' ? 1 : -1, size);
          event.preventDefault();
          if (text === null) return;
          put({ text, problem: null });
          still();
          rest.current = setTimeout(settle, REST);
        } else return;
        if (event.key !== 'Escape') event.preventDefault();
      },
    },
  };
}
