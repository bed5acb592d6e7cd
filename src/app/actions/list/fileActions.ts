/** Open, save, undo and redo as actions. */
import { documents } from '../../document';
import { history } from '../../history';
import { openFiles } from '../open';
import { saveDesign } from '../save';
import type { Action } from './action';
import { hasDesign, OPEN_FIRST } from './workActions';

/** The browser's own picker, as the button has it. */
function pickFiles(): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.multiple = true;
  input.accept = '.json,.stl';
  input.onchange = () => void openFiles([...(input.files ?? [])]);
  input.click();
}

export const fileActions: readonly Action[] = [
  {
    id: 'file.open',
    name: 'Open a design',
    group: 'Design',
    keys: ['Mod+O'],
    also: 'file load import mesh stl',
    run: pickFiles,
  },
  {
    id: 'file.save',
    name: 'Save the design',
    group: 'Design',
    keys: ['Mod+S'],
    also: 'file download store',
    ready: hasDesign,
    why: () => OPEN_FIRST,
    run: saveDesign,
  },
  {
    id: 'history.undo',
    name: 'Undo',
    group: 'Design',
    keys: ['Mod+Z'],
    also: 'back step history',
    ready: () => history.store.getState().past.length > 0 || documents.store.getState().gesture !== null,
    why: () => 'Nothing to undo',
    run: () => history.undo(),
  },
  {
    id: 'history.redo',
    name: 'Redo',
    group: 'Design',
    keys: ['Mod+Shift+Z', 'Mod+Y'],
    also: 'forward again step history',
    ready: () => history.store.getState().future.length > 0,
    why: () => 'Nothing to redo',
    run: () => history.redo(),
  },
];
