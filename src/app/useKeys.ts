/**
 * The page's one listener for keys: each asks for the action that claims it. Fields keep their own keys, all but the few
 * that mean nothing to text; an open sheet or dialog keeps them all. Escape lets go, of the nearest thing first.
 */
import { useEffect } from 'react';
import { actionFor, isReady } from './actions/list/registry';
import { useHand } from './hand/hand';
import { useSession } from './session';
import { useViewState } from './viewState';

/** What writing needs: there these keys edit text. */
const TEXT_KEYS = new Set(['a', 'c', 'v', 'x', 'y', 'z', 'b', 'i', 'u']);
const FIELD = 'input:not([type=range], [type=checkbox], [type=radio]), textarea, select, [contenteditable=true]';

export function useKeys(): void {
  useEffect(() => {
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}

function press(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  const target = event.target instanceof Element ? event.target : null;
  if (target?.closest('dialog') || document.querySelector('dialog[open]:modal')) return;
  const field = target?.closest<HTMLElement>(FIELD);
  if (field && (!(event.ctrlKey || event.metaKey) || TEXT_KEYS.has(event.key.toLowerCase()))) return;
  if (event.key === 'Escape') {
    letGo();
    return;
  }
  const action = actionFor(event);
  if (!action) return;
  event.preventDefault();
  if (event.repeat && !action.id.startsWith('pick.') && !action.id.startsWith('history.')) return;
  // What is typed but not yet taken would be missing from what is saved or balanced.
  field?.blur();
  if (isReady(action)) void action.run();
}

/** A gesture first (its own tool answers), then measuring, then what is picked. */
function letGo(): void {
  if (useHand.getState().held) return;
  const view = useViewState.getState();
  if (view.from) useViewState.setState({ from: null });
  else if (view.measuring) view.setMeasuring(false);
  else useSession.getState().select(null);
}
