/** Which of the two sheets over the page is open: the list to search and run from, or the keys to read. */
import { create } from 'zustand';
import type { Action } from './action';

export type Sheet = 'actions' | 'keys';

export const useSheet = create<{ readonly open: Sheet | null }>()(() => ({ open: null }));

export const openSheet = (open: Sheet): void => useSheet.setState({ open });
export const closeSheet = (): void => useSheet.setState({ open: null });

export const listActions: readonly Action[] = [
  {
    id: 'list.actions',
    name: 'Find an action',
    group: 'Help',
    keys: ['Mod+K', '?'],
    also: 'search list command help',
    run: () => openSheet('actions'),
  },
  {
    id: 'list.keys',
    name: 'Show all keys',
    group: 'Help',
    keys: ['Shift+K'],
    also: 'keyboard shortcuts help',
    run: () => openSheet('keys'),
  },
];
