/** The sheet for a template of one's own: whether it is open, and the action that opens it. */
import { create } from 'zustand';
import type { Action } from '../actions/list/action';

export const useTemplate = create<{ readonly open: boolean }>()(() => ({ open: false }));

export const openTemplate = (): void => useTemplate.setState({ open: true });
export const closeTemplate = (): void => useTemplate.setState({ open: false });

export const templateActions: readonly Action[] = [
  {
    id: 'work.template',
    name: 'Wrap-around template…',
    group: 'Design',
    also: 'saddle mitre miter cope fishmouth notch segmented bend pie cut print paper svg pdf',
    run: openTemplate,
  },
];
