/** The page that follows the engine on the header: whether it is open, and the action that opens it. Part of the first load: keep it small. */
import { create } from 'zustand';
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';

export const useForecast = create<{ readonly open: boolean }>()(() => ({ open: false }));

export const openForecast = (): void => useForecast.setState({ open: true });
export const closeForecast = (): void => useForecast.setState({ open: false });

export const forecastActions: readonly Action[] = [
  {
    id: 'work.forecast',
    name: 'What the header gains…',
    group: 'Design',
    keys: ['Shift+G'],
    also: 'engine torque power curve forecast volumetric efficiency residual pumping manifold rpm gas exchange simulate tune',
    ...needsDesign,
    run: openForecast,
  },
];
