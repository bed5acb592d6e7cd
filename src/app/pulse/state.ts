/** The page that shows pressure waves in pipes: whether it is open, and the action that opens it. Part of the first load: keep it small. */
import { create } from 'zustand';
import type { Action } from '../actions/list/action';

export const useWaves = create<{ readonly open: boolean }>()(() => ({ open: false }));

export const openWaves = (): void => useWaves.setState({ open: true });
export const closeWaves = (): void => useWaves.setState({ open: false });

export const waveActions: readonly Action[] = [
  {
    id: 'work.waves',
    name: 'Pressure waves in pipes…',
    group: 'Design',
    also: 'gas flow rig pulse probe shock velocity temperature csv',
    run: openWaves,
  },
];
