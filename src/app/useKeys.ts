/** The page's keys: undo, redo, save, and Escape to let go of what is selected. Fields keep their own. */
import { useEffect } from 'react';
import { saveDesign } from './actions/save';
import { history } from './history';
import { useSession } from './session';

export function useKeys(): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const inField = event.target instanceof Element && event.target.closest('input, textarea, dialog') !== null;
      if (inField) return;
      const key = event.key.toLowerCase();
      if (key === 'escape') {
        useSession.getState().select(null);
      }
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      if (key === 'z' && !event.shiftKey) history.undo();
      else if (key === 'y' || key === 'z') history.redo();
      else if (key === 's') void saveDesign();
      else return;
      event.preventDefault();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, []);
}
