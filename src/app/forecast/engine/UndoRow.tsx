/** Back and forward through every change, by button. */

import { useStore } from 'zustand';
import { actionById } from '../../actions/list/registry';
import { history } from '../../history';

export function UndoRow() {
  const past = useStore(history.store, (s) => s.past);
  const future = useStore(history.store, (s) => s.future);
  const button = (id: 'history.undo' | 'history.redo', label: string | undefined) => {
    const action = actionById(id);
    return (
      <button
        type="button"
        className="button"
        disabled={label === undefined}
        title={label && `${action.name}: ${label}`}
        onClick={() => void action.run()}
      >
        {action.name}
      </button>
    );
  };
  return (
    <span className="gain-undo">
      {button('history.undo', past.at(-1)?.label)} {button('history.redo', future[0]?.label)}
    </span>
  );
}
