/** Measuring, as actions. */
import type { Action } from '../actions/list/action';
import { needsDesign } from '../actions/list/workActions';
import { useViewState } from '../viewState';

export const measureActions: readonly Action[] = [
  {
    id: 'measure.start',
    name: 'Measure between two things',
    group: 'Measure',
    keys: ['M'],
    also: 'distance gap angle dimension tape rule clearance',
    ...needsDesign,
    run: () => useViewState.getState().setMeasuring(!useViewState.getState().measuring),
  },
  {
    id: 'measure.clear',
    name: 'Clear all measurements',
    group: 'Measure',
    also: 'dimension remove',
    ready: () => useViewState.getState().measured.length > 0,
    why: () => 'Nothing was measured',
    run: () => useViewState.getState().forgetAll(),
  },
];
