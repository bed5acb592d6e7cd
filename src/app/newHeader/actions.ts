/** A new header as an action. */
import type { Action } from '../actions/list/action';
import { openNewHeader } from './state';

export const newHeaderActions: readonly Action[] = [
  {
    id: 'design.new',
    name: 'Start a new header from an engine',
    group: 'Design',
    keys: ['Shift+E'],
    also: 'new create cylinders bore stroke firing order pairs sizes primary length diameter',
    run: openNewHeader,
  },
];
