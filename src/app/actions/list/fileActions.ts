/** Files, the designs kept in this browser, their versions and their history as actions. */
import { documents } from '../../document';
import { history } from '../../history';
import { copyOpenDesign } from '../../shelf/copy';
import { openCompare } from '../../versions/compareState';
import { keepVersionNow } from '../../versions/keep';
import { askAndOpen } from '../open';
import { saveAs, saveDesign } from '../save';
import type { Action } from './action';
import { chooseExample, chooseStep } from './choices';
import { needsDesign } from './workActions';

export const fileActions: readonly Action[] = [
  {
    id: 'file.open',
    name: 'Open a design',
    group: 'Design',
    keys: ['Mod+O'],
    also: 'file load import mesh stl',
    run: askAndOpen,
  },
  {
    id: 'file.example',
    name: 'Start from an example…',
    group: 'Design',
    also: 'new open sample try header',
    run: chooseExample,
  },
  {
    id: 'file.save',
    name: 'Save the design',
    group: 'Design',
    keys: ['Mod+S'],
    also: 'file download store',
    ...needsDesign,
    run: saveDesign,
  },
  {
    id: 'file.save-as',
    name: 'Save as…',
    group: 'Design',
    keys: ['Mod+Shift+S'],
    also: 'file another name place download',
    ...needsDesign,
    run: saveAs,
  },
  {
    id: 'file.copy',
    name: 'Copy this design',
    group: 'Design',
    also: 'duplicate another beside',
    ...needsDesign,
    run: copyOpenDesign,
  },
  {
    id: 'version.keep',
    name: 'Keep this version',
    group: 'Design',
    also: 'save point snapshot past',
    ...needsDesign,
    run: () => keepVersionNow(),
  },
  {
    id: 'version.compare',
    name: 'Compare versions or designs…',
    group: 'Design',
    also: 'difference between two beside',
    ...needsDesign,
    run: () => openCompare(),
  },
  {
    id: 'history.first',
    name: 'Back to as it was opened',
    group: 'Design',
    also: 'undo all steps history start',
    ready: () => history.store.getState().past.length > 0,
    why: () => 'Nothing to undo',
    run: () => history.jump(0),
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
  {
    id: 'history.jump',
    name: 'Go to a step of history…',
    group: 'Design',
    also: 'jump back forward past undo redo many steps',
    ready: () => history.store.getState().past.length + history.store.getState().future.length > 0,
    why: () => 'Nothing has been changed yet',
    run: chooseStep,
  },
];
