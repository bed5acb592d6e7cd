/** Save, undo and redo as actions. */
import { documents } from '../../document';
import { history } from '../../history';
import { saveDesign } from '../save';
import type { Action } from './action';
import { hasDesign, OPEN_FIRST } from './workActions';

export const fileActions: readonly Action[] = [
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
