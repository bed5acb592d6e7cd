/** Back and forward by key while the page is up: the bench's own listener leaves dialogs alone. Fields keep the keys, which edit text there. */
import { useEffect } from 'react';
import { actionFor, isReady } from '../actions/list/registry';

const FIELD = 'input:not([type=range], [type=checkbox], [type=radio]), textarea, select, [contenteditable=true]';

export function useUndoKeys(): void {
  useEffect(() => {
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}

function press(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  if (event.target instanceof Element && event.target.closest(FIELD)) return;
  const action = actionFor(event);
  if (action?.id !== 'history.undo' && action?.id !== 'history.redo') return;
  event.preventDefault();
  if (isReady(action)) void action.run();
}
