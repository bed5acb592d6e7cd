/** What the sheet over the page shows: the list of all actions, what one of them asks to choose from, or the keys. */
import { create } from 'zustand';
import type { Action } from './action';

/** A list to choose from, with its words. */
export type Choice = {
  readonly title: string;
  /** What its field is for. */
  readonly ask: string;
  /** In the field while nothing is typed. */
  readonly hint: string;
  /** Said where nothing goes by what was typed. */
  readonly none: string;
  readonly actions: readonly Action[];
};

export type Sheet = 'actions' | 'keys' | Choice;

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
